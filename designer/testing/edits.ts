import { POINT_KINDS, type PointDefinition, translatableTexts } from "@roundbook/schemas";
import {
  addParticular,
  addValue,
  changeParticular,
  changeValue,
  removeParticular,
  removeValue,
} from "../model/around-edit.ts";
import { changeKind } from "../model/change-kind.ts";
import {
  addGroup,
  addPoint,
  changeGroup,
  changePoint,
  duplicatePoint,
  moveGroup,
  movePoint,
  removeGroup,
  removePoint,
  setMember,
} from "../model/commands.ts";
import {
  type DraftDocument,
  emptyDocument,
  optionsOf,
  withOptions,
} from "../model/draft-document.ts";
import { setIncluded } from "../model/include-edit.ts";
import { addLimit, changeLimit, removeLimit } from "../model/limit-edit.ts";
import { membersFrom, setRepeat } from "../model/repeat-edit.ts";
import {
  addBand,
  addScore,
  changeBand,
  changeScore,
  removeBand,
  removeScore,
} from "../model/score-edit.ts";
import { addStop, changeStop, removeStop } from "../model/stop-edit.ts";

/** Every text begins with the number of what it is a text of, for as long as that stands. */
export const numbered = () => {
  let last = 0;
  return (what: string) => `${what} #${++last}|`;
};
export const ofText = (text: string): string | undefined => /#\d+\|/.exec(text)?.[0];
export const inWelsh = (text: string): string => `cy ${ofText(text)}`;

/** A checklist with a text of every kind that can be worded, each worded. */
export const wholeList = (text: (what: string) => string): DraftDocument => {
  let list: DraftDocument = { ...emptyDocument(text("list")), language: "en" };
  for (const id of ["alpha", "beta", "gamma"])
    list = changeGroup(addGroup(list, id), id, { title: text("group") });
  const add = (kind: (typeof POINT_KINDS)[number], group: string | null) => {
    const made = addPoint(list, kind, kind, group);
    list = changePoint(made.document, made.name, (one) => {
      const titled = { ...one, title: text(kind), description: text("help") };
      const options = optionsOf(one).map((option) => ({ ...option, title: text("option") }));
      const limits = [1, 2, 3].map(() => ({ max: 1, basis: text("basis") }));
      return { ...(options.length > 0 ? withOptions(titled, options) : titled), limits };
    });
  };
  for (const [kind, group] of [
    ["check", "alpha"],
    ["choice", "alpha"],
    ["reading", "beta"],
    ["choices", "beta"],
    ["graded", "gamma"],
    ["count", null],
    ["text", null],
  ] as const)
    add(kind, group);
  list = setMember(list, "description", text("description"));
  list = setMember(list, "cautions", [text("caution"), text("caution"), text("caution")]);
  const members = membersFrom([text("left"), text("right"), text("middle")]);
  list = setRepeat(list, "gamma", { each: text("each"), members });
  for (const name of ["one", "two"]) {
    list = addParticular(list, name).document;
    list = changeParticular(list, name, (one) => ({ ...one, title: text("particular") }));
    list = addValue(list, `v${name}`).document;
    list = changeValue(list, `v${name}`, (one) => ({ ...one, title: text("value") }));
  }
  list = changeScore(addScore(list, text("score")), "score", (score) => ({
    ...score,
    basis: text("basis"),
    bands: [80, 60, 0].map((from) => ({ title: text("band"), from, basis: text("basis") })),
  }));
  for (const order of [
    ["check", "choice"],
    ["choice", "reading"],
    ["reading", "check"],
  ])
    list = addStop(list, order, text("say"));
  const texts = translatableTexts(list).map((one) => [one.pointer, inWelsh(one.text)]);
  return { ...list, wording: { cy: Object.fromEntries(texts) } };
};

export type Pick = (upTo: number) => number;

/** Draws by the numbers given, over and over. */
export const drawing = (numbers: readonly number[]): Pick => {
  let drawn = 0;
  return (upTo) => (numbers[drawn++ % numbers.length] ?? 0) % Math.max(1, upTo);
};

export type Command = (
  list: DraftDocument,
  pick: Pick,
  text: (what: string) => string,
) => DraftDocument;

const one = <T>(all: readonly T[], pick: Pick): T | undefined => all[pick(all.length)];
const pointOf = (list: DraftDocument, pick: Pick) => one(Object.keys(list.properties), pick) ?? "";
const groupOf = (list: DraftDocument, pick: Pick) =>
  one(
    (list.groups ?? []).map(({ id }) => id),
    pick,
  ) ?? "";
const turned = <T>(all: readonly T[], pick: Pick): T[] => {
  const at = pick(all.length + 1);
  return [...all.slice(at), ...all.slice(0, at)].toSorted(() => pick(3) - 1);
};
const onPoint =
  (
    next: (point: PointDefinition, pick: Pick, text: (what: string) => string) => PointDefinition,
  ): Command =>
  (list, pick, text) =>
    changePoint(list, pointOf(list, pick), (point) => next(point, pick, text));
/** Says it in other words, and is the same thing still. */
const said = (text: string) => `${text} once more`;

export const COMMANDS: Readonly<Record<string, Command>> = {
  addGroup: (list, _, text) => addGroup(list, text("group")),
  renameGroup: (list, pick) => {
    const id = groupOf(list, pick);
    const title = list.groups?.find((group) => group.id === id)?.title ?? "";
    return changeGroup(list, id, { title: said(title) });
  },
  moveGroup: (list, pick) => moveGroup(list, groupOf(list, pick), pick(2) ? 1 : -1),
  removeGroup: (list, pick) => removeGroup(list, groupOf(list, pick)),
  repeat: (list, pick, text) => {
    const group = list.groups?.find(({ id, repeat }) => !repeat && id === groupOf(list, pick));
    if (!group) return setRepeat(list, groupOf(list, pick), undefined);
    const each = text("each");
    const members = membersFrom([text("left"), text("right")]);
    return setRepeat(list, group.id, { each, members });
  },
  reorderMembers: (list, pick, text) => {
    const group = list.groups?.find(({ repeat }) => repeat?.members);
    if (!group?.repeat?.members) return list;
    const { repeat } = group;
    const titles = turned(
      group.repeat.members.map(({ title }) => title),
      pick,
    );
    const kept = [...titles.slice(pick(2)), text("member")];
    return setRepeat(list, group.id, { ...repeat, members: membersFrom(kept, repeat.members) });
  },
  addPoint: (list, pick, text) =>
    addPoint(
      list,
      POINT_KINDS[pick(POINT_KINDS.length)] ?? "check",
      text("point"),
      groupOf(list, pick) || null,
    ).document,
  movePoint: (list, pick) => movePoint(list, pointOf(list, pick), pick(2) ? 1 : -1),
  duplicatePoint: (list, pick) => duplicatePoint(list, pointOf(list, pick)).document,
  removePoint: (list, pick) => removePoint(list, pointOf(list, pick)),
  renamePoint: onPoint((point) => ({ ...point, title: said(point.title) })),
  removeHelp: onPoint(({ description: _, ...point }) => point),
  changeKind: (list, pick) => {
    const name = pointOf(list, pick);
    const kind = POINT_KINDS[pick(POINT_KINDS.length)] ?? "check";
    return changeKind(list, name, kind, new Set(pick(2) ? [name] : [])).document;
  },
  reorderOptions: onPoint((point, pick, text) => {
    const options = turned(optionsOf(point), pick);
    if (options.length === 0) return point;
    const fresh = { const: `o${text("")}`, title: text("option") };
    return withOptions(point, [...options.slice(pick(2)), ...(pick(2) ? [fresh] : [])]);
  }),
  addLimit: onPoint((point, _, text) => addLimit(point, { max: 2, basis: text("basis") })),
  removeLimit: onPoint((point, pick) => removeLimit(point, pick(point.limits?.length ?? 0))),
  changeLimit: onPoint((point, pick) =>
    changeLimit(point, pick(point.limits?.length ?? 0), (limit) => ({
      ...limit,
      max: pick(9),
      ...(limit.basis ? { basis: said(limit.basis) } : {}),
    })),
  ),
  reorderLimits: onPoint((point, pick) =>
    point.limits ? { ...point, limits: turned(point.limits, pick) } : point,
  ),
  cautions: (list, pick, text) => {
    const left = turned(list.cautions ?? [], pick).slice(pick(2));
    const cautions = pick(2) ? [...left, text("caution")] : left;
    return setMember(list, "cautions", cautions.length > 0 ? cautions : undefined);
  },
  title: (list) => setMember(list, "title", said(list.title)),
  minutes: (list, pick) => setMember(list, "minutes", pick(9) + 1),
  description: (list, pick, text) => {
    const words = list.description ? said(list.description) : text("description");
    return setMember(list, "description", pick(2) ? words : undefined);
  },
  addParticular: (list, _, text) => addParticular(list, text("particular")).document,
  changeParticular: (list, pick) =>
    changeParticular(list, one(Object.keys(list.particulars ?? {}), pick) ?? "", (particular) => ({
      ...particular,
      order: pick(9) + 1,
      title: said(particular.title),
    })),
  removeParticular: (list, pick) =>
    removeParticular(list, one(Object.keys(list.particulars ?? {}), pick) ?? ""),
  addValue: (list, _, text) => addValue(list, text("value")).document,
  changeValue: (list, pick) =>
    changeValue(list, one(Object.keys(list.values ?? {}), pick) ?? "", (value) => ({
      ...value,
      const: pick(9),
    })),
  removeValue: (list, pick) => removeValue(list, one(Object.keys(list.values ?? {}), pick) ?? ""),
  removeScore: (list, pick) => (pick(4) ? list : removeScore(list, "score")),
  addScore: (list, _, text) => (list.scores ? list : addScore(list, text("score"))),
  addBand: (list, _, text) => changeScore(list, "score", (score) => addBand(score, text("band"))),
  changeBand: (list, pick) =>
    changeScore(list, "score", (score) =>
      changeBand(score, pick(score.bands.length), (band) => ({
        ...band,
        from: pick(100),
        title: said(band.title),
      })),
    ),
  removeBand: (list, pick) =>
    changeScore(list, "score", (score) => removeBand(score, pick(score.bands.length))),
  addStop: (list, pick, text) =>
    addStop(list, turned(Object.keys(list.properties), pick), text("say")),
  changeStop: (list, pick) =>
    changeStop(list, pick(list.stops?.length ?? 0), (stop) => ({ ...stop, say: said(stop.say) })),
  removeStop: (list, pick) => removeStop(list, pick(list.stops?.length ?? 0)),
  include: (list, pick) => setIncluded(list, pick(2) ? ["shared"] : []),
};
