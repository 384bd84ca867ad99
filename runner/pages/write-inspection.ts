import {
  type Answers,
  type BodyOf,
  type Evidence,
  type Judgement,
  pointKind,
} from "@roundbook/schemas";
import type { FinishedFilling } from "../form/index.ts";
import type { Draft, PaperDraft } from "../offline/database.ts";
import { Commitments } from "../offline/make-entry.ts";
import type { ToFill } from "./use-fill.ts";

const committedEvidence = async (
  evidence: Evidence,
  commitments: Commitments,
): Promise<NonNullable<BodyOf<"inspection">["evidence"]>> => {
  const committed: NonNullable<BodyOf<"inspection">["evidence"]> = {};
  for (const [point, items] of Object.entries(evidence)) {
    committed[point] = await Promise.all(
      items.map(async ({ note, ...item }) => ({
        ...item,
        ...(note === undefined ? {} : { note: await commitments.written(note) }),
      })),
    );
  }
  return committed;
};

const paperOf = async (
  { doneBy, sheet }: PaperDraft,
  commitments: Commitments,
  now: number,
): Promise<NonNullable<BodyOf<"inspection">["fromPaper"]>> => ({
  keyedAt: new Date(now).toISOString(),
  ...(doneBy.trim() === "" ? {} : { doneBy: await commitments.of(doneBy.trim()) }),
  ...(sheet.length === 0 ? {} : { sheet: [...sheet] }),
});

/** The body of an inspection's entry, with every text a person wrote committed beside it. */
export const inspectionBody = async (
  { asset, issue }: Pick<ToFill, "asset" | "issue">,
  finished: FinishedFilling,
  when: Pick<Draft, "startedAt" | "cautionsAt" | "paper">,
  now: number,
): Promise<{ body: BodyOf<"inspection">; contents: Commitments["contents"] }> => {
  const commitments = new Commitments();
  const texts = new Set(
    Object.entries(issue.document.properties)
      .filter(([, point]) => pointKind(point) === "text")
      .map(([name]) => name),
  );
  const answers: Answers = await commitments.answers(finished.answers, texts);
  const judgement: Judgement = finished.judgement;
  const body: BodyOf<"inspection"> = {
    checklist: { id: issue.id, issue: issue.issue, hash: issue.hash },
    particulars: { ...asset.particulars },
    answers: answers as Record<string, unknown>,
    evidence: await committedEvidence(finished.evidence, commitments),
    declared: [...finished.declared],
    startedAt: new Date(when.startedAt).toISOString(),
    ...(when.cautionsAt === null
      ? {}
      : { cautions: { acknowledgedAt: new Date(when.cautionsAt).toISOString() } }),
    ...(when.paper === undefined ? {} : { fromPaper: await paperOf(when.paper, commitments, now) }),
    judgement: judgement as unknown as Record<string, unknown>,
  };
  return { body, contents: commitments.contents };
};
