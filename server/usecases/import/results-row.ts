import {
  type Answer,
  at,
  type BodyOf,
  type ChecklistRow,
  type Content,
  type Judge,
  type Particulars,
  problem,
  type ResultsMapping,
  splitAnswerName,
  validateAnswers,
} from "@roundbook/schemas";
import type { Made } from "../append-entries.ts";
import { commitText } from "../commit-text.ts";
import { patterns } from "../engines.ts";
import { columnsOf, readAnswer } from "./answer.ts";
import { readDate } from "./cell.ts";
import {
  badRow,
  type Desk,
  fault,
  type KnownAsset,
  type NamedRow,
  type RowOutcome,
} from "./desk.ts";
import { newAsset } from "./new-asset.ts";
import { readParticulars } from "./particular.ts";
import type { Fault } from "./tally.ts";

/** The issue that judges the rows of one import. */
export interface Rule {
  readonly issued: ChecklistRow;
  readonly judge: Judge;
}

/** A row of past results: one inspection, judged now by the newest issue, dated by its day alone. */
export function resultsRow(
  desk: Desk<ResultsMapping>,
  rule: Rule,
  row: NamedRow,
  known: readonly KnownAsset[],
): RowOutcome {
  const { mapping, today } = desk;
  const faults: Fault[] = [];
  const day = readDate(row.cell(mapping.date.column), mapping.date.format, today);
  if (!day.ok)
    for (const found of day.problems)
      faults.push(fault(mapping.date.column, { ...found, pointer: "/date" }));
  const answers = readAnswers(desk, rule, row, faults);
  const subject = subjectOf(desk, row, known);
  if ("faults" in subject) faults.push(...subject.faults);
  if (faults.length > 0 || !day.ok || "faults" in subject) return badRow(...faults);
  const { asset, made, places } = subject;
  const particulars = asThen(desk, row, asset);
  if (particulars.faults.length > 0) return badRow(...particulars.faults);
  const contents: Content[] = [];
  const judgement = rule.judge.judge({
    particulars: particulars.particulars,
    answers,
    on: day.value,
  });
  const { id, issue, hash } = rule.issued;
  const body: BodyOf<"inspection"> = {
    checklist: { id, issue, hash },
    particulars: particulars.particulars,
    answers: sealable(rule, answers, contents),
    judgement: { ...judgement },
    source: { name: mapping.source, key: row.key, content: row.content },
  };
  const inspection: Made = {
    kind: "inspection",
    id: row.entry,
    asset: asset.id,
    author: desk.by.person,
    civilDate: day.value,
    happenedAt: null,
    body,
  };
  const entries = made ? [made, inspection] : [inspection];
  return { outcome: "new", draft: { entries, contents, asset: made ? asset : null, places } };
}

function readAnswers(
  { mapping, decimal }: Desk<ResultsMapping>,
  { issued }: Rule,
  { cell }: NamedRow,
  faults: Fault[],
): Readonly<Record<string, Answer>> {
  const answers: Record<string, Answer> = {};
  for (const [name, how] of Object.entries(mapping.answers)) {
    const point = issued.document.properties[splitAnswerName(name).point];
    if (!point || !how) continue;
    const cells = columnsOf(how).map(cell);
    const waited = how.elapsed === undefined ? "" : cell(how.elapsed);
    const notation = { decimal, format: mapping.date.format };
    const answer = readAnswer(point, how, cells, notation, waited);
    if (!answer.ok)
      for (const found of answer.problems)
        faults.push(fault(how.column, { ...found, pointer: at("/answers", name) }));
    else if (answer.value !== null) answers[name] = answer.value;
  }
  for (const found of validateAnswers(issued.document, answers, patterns)) {
    const name = found.pointer.split("/")[1] ?? "";
    const column = mapping.answers[name]?.column ?? null;
    faults.push(fault(column, { ...found, pointer: `/answers${found.pointer}` }));
  }
  return answers;
}

type Subject =
  | {
      readonly asset: KnownAsset;
      readonly made: Made | null;
      readonly places: Extract<ReturnType<typeof newAsset>, { asset: KnownAsset }>["places"];
    }
  | { readonly faults: readonly Fault[] };

function subjectOf(
  desk: Desk<ResultsMapping>,
  row: NamedRow,
  known: readonly KnownAsset[],
): Subject {
  const column = desk.mapping.asset.number;
  const { number } = row;
  const [asset, other] = known;
  if (other)
    return {
      faults: [
        fault(
          column,
          problem("/asset/number", "number-ambiguous", { number, assets: known.length }),
        ),
      ],
    };
  if (asset) return { asset, made: null, places: [] };
  if (desk.mapping.createAssets) return newAsset(desk, row);
  return { faults: [fault(column, problem("/asset/number", "unknown-asset", { number }))] };
}

/** Particulars as the row says they were; what it does not say, as the register has them. */
function asThen(desk: Desk<ResultsMapping>, { cell }: NamedRow, asset: KnownAsset) {
  const columns = desk.mapping.asset.particulars;
  if (!columns) return { particulars: asset.particulars, faults: [] };
  const definitions = desk.types.get(asset.assetType)?.particulars ?? {};
  const read = readParticulars(definitions, columns, cell, desk.decimal);
  const particulars: Particulars = { ...asset.particulars, ...read.particulars };
  return { particulars, faults: read.faults };
}

/** Answers as the log keeps them: free text is personal, and stands beside the log. */
function sealable(
  { issued }: Rule,
  answers: Readonly<Record<string, Answer>>,
  contents: Content[],
): Record<string, Answer> {
  return Object.fromEntries(
    Object.entries(answers).map(([name, answer]) => {
      const { point } = splitAnswerName(name);
      const isText = issued.document.properties[point]?.$ref === "#/$defs/text";
      if (!isText || typeof answer !== "string") return [name, answer];
      const { commitment, content } = commitText(answer);
      contents.push(content);
      return [name, commitment];
    }),
  );
}
