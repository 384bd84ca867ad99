import {
  type Checklist,
  compileJudge,
  type Judge,
  type Problem,
  usesPrevious,
} from "@roundbook/schemas";
import { compileAnswers } from "@roundbook/schemas/validate";
import { eq } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { checklistDocs } from "../store/schema/register.ts";
import { formulas } from "./engines.ts";

/** An issued document made ready: compiling costs milliseconds, judging microseconds. */
export interface ReadyChecklist {
  readonly document: Checklist;
  readonly judge: Judge;
  /** Whether a limit compares with the inspection before. */
  readonly usesPrevious: boolean;
  /** What is ill-formed in the answers; pointers into them. */
  readonly problemsOf: (answers: unknown) => readonly Problem[];
}

const KEPT = 100;

/** Issued documents never change, so what is kept by their hash never goes stale. */
export class ChecklistCache {
  readonly #ready = new Map<string, ReadyChecklist>();

  /** Null when no checklist with this hash was issued here. */
  async get(db: Db, hash: string): Promise<ReadyChecklist | null> {
    const known = this.#ready.get(hash);
    if (known !== undefined) {
      // The one used last goes to the end: the first is the one to let go.
      this.#ready.delete(hash);
      this.#ready.set(hash, known);
      return known;
    }
    const [row] = await db
      .select({ document: checklistDocs.document })
      .from(checklistDocs)
      .where(eq(checklistDocs.hash, hash));
    if (row === undefined) return null;
    const { document } = row;
    let check: ((answers: unknown) => readonly Problem[]) | undefined;
    const ready: ReadyChecklist = {
      document,
      judge: compileJudge(document, formulas),
      usesPrevious: usesPrevious(document),
      problemsOf: (answers) => {
        check ??= compileAnswers(document);
        return check(answers);
      },
    };
    this.#ready.set(hash, ready);
    const [oldest] = this.#ready.keys();
    if (this.#ready.size > KEPT && oldest !== undefined) this.#ready.delete(oldest);
    return ready;
  }
}
