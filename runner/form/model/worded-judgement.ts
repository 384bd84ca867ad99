import {
  type Checklist,
  type Explanation,
  type Judgement,
  type LimitJudgement,
  type PointJudgement,
  splitAnswerName,
  wordedText,
} from "@roundbook/schemas";

/** What a stop tells, found by its own text: the judgement holds no place of it. */
function said(why: Explanation, data: Checklist, shown: Checklist): Explanation {
  const at = (data.stops ?? []).findIndex(({ say }) => say === why.params.say);
  const say = at < 0 ? undefined : shown.stops?.[at]?.say;
  return say === undefined ? why : { ...why, params: { ...why.params, say } };
}

/** A limit with its basis in other words, where there are any. */
export function limited(limit: LimitJudgement, basis: string | undefined): LimitJudgement {
  return limit.basis === undefined || basis === undefined ? limit : { ...limit, basis };
}

/** Band titles are data: only what is shown of them is in the reader's language. */
function bandIn(data: Checklist, language: string, score: string, band: string | null) {
  const at = data.scores?.[score]?.bands.findIndex(({ title }) => title === band) ?? -1;
  return at < 0 ? band : wordedText(data, language, `/scores/${score}/bands/${at}/title`);
}

/**
 * A judgement with the texts of `shown`, the same document in another language, in place of those
 * of `data`: for showing only. What is sealed is the judgement as it was made.
 */
export function wordedJudgement(
  judgement: Judgement,
  data: Checklist,
  shown: Checklist,
  language: string,
): Judgement {
  const point = (name: string, judged: PointJudgement): PointJudgement => {
    const definition = shown.properties[splitAnswerName(name).point];
    return {
      ...judged,
      why: judged.why.code === "stopped" ? said(judged.why, data, shown) : judged.why,
      limits: judged.limits.map((limit) =>
        limited(limit, definition?.limits?.[limit.index]?.basis),
      ),
    };
  };
  const groups = new Map((shown.groups ?? []).map((group) => [group.id, group]));
  return {
    ...judgement,
    scores: Object.fromEntries(
      Object.entries(judgement.scores).map(([name, score]) => [
        name,
        { ...score, band: bandIn(data, language, name, score.band) },
      ]),
    ),
    points: Object.fromEntries(
      Object.entries(judgement.points).map(([name, judged]) => [name, point(name, judged)]),
    ),
    repeats: Object.fromEntries(
      Object.entries(judgement.repeats).map(([id, repeat]) => {
        const worded = groups.get(id)?.repeat;
        const members = repeat.members.map((member) => ({
          ...member,
          title:
            worded?.members?.find((one) => one.id === member.id)?.title ??
            (worded?.each === undefined ? member.title : `${worded.each} ${member.id}`),
        }));
        return [id, { ...repeat, members }];
      }),
    ),
  };
}
