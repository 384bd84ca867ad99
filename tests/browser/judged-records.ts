import { type Checklist, canonicalize, compileJudge, toHex, utf8 } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { STARTERS } from "@roundbook/schemas/starters";
import fc from "fast-check";
import { RICH } from "../../schemas/judge/testing/rich-checklist.ts";
import { sheetOf } from "../../schemas/judge/testing/sheets.ts";
import { EVERY_KIND } from "../../schemas/testing/every-kind.ts";
import { LEAVES_AND_SOCKETS } from "../../schemas/testing/leaves-and-sockets.ts";

/** Of one checklist: how many records were judged, their verdicts, SHA-256 of the judgements. */
export interface Judged {
  readonly title: string;
  readonly records: number;
  readonly verdicts: readonly string[];
  readonly digest: string;
}

const EACH = 180;
const DOCS: readonly Checklist[] = [
  ...STARTERS.map(({ checklist }) => checklist),
  EVERY_KIND,
  LEAVES_AND_SOCKETS,
  RICH,
];

async function judged(doc: Checklist, seed: number): Promise<Judged> {
  const judge = compileJudge(doc, createFormulaEngine());
  const sheets = fc.sample(sheetOf(doc), { seed, numRuns: EACH });
  const judgements = sheets.map((sheet) => judge.judge(sheet));
  // Records and judgements: that both sides judged the same is part of what is compared.
  const text = sheets.map((sheet, at) => canonicalize({ sheet, judgement: judgements[at] }));
  const digest = await crypto.subtle.digest("SHA-256", utf8(text.join("\n")));
  return {
    title: doc.title,
    records: sheets.length,
    verdicts: [...new Set(judgements.map(({ overall }) => String(overall)))].toSorted(),
    digest: toHex(new Uint8Array(digest)),
  };
}

/** The same records on every machine and in every engine. */
export const judgedRecords = (): Promise<Judged[]> =>
  Promise.all(DOCS.map((doc, at) => judged(doc, 20_260_401 + at)));
