import type { Answers, Checklist, Evidence, Judgement, Particulars } from "@roundbook/schemas";
import type { ReactNode } from "react";
import type { LastReading, PhotoDoor } from "./fields/field.ts";
import type { Filled, Wait } from "./model/filled.ts";

/** What the form gives a page to put in its places: the leaf, and the dock at its foot. */
export interface FormParts {
  readonly page: ReactNode;
  readonly dock: ReactNode;
}

export interface FinishedFilling extends Filled {
  readonly judgement: Judgement;
}

export interface ChecklistFormProps extends PhotoDoor {
  readonly document: Checklist;
  /** Printed where the limits are named; a draft has none. */
  readonly issue?: number;
  readonly particulars: Particulars;
  readonly initialAnswers?: Answers;
  readonly initialEvidence?: Evidence;
  readonly initialDeclared?: readonly string[];
  /** Waits started in an earlier sitting: their clocks go on. */
  readonly initialWaits?: Readonly<Record<string, Wait>>;
  /** The language its texts are shown in; what is judged and kept is the document's own. */
  readonly language?: string;
  /** Answers of the last complete inspection of this asset under this checklist. */
  readonly previousAnswers?: Answers;
  /** Last readings by name of their answer. */
  readonly previous?: Readonly<Record<string, LastReading>>;
  /** A sentence by point about a defect already open there. */
  readonly openDefects?: Readonly<Record<string, string>>;
  /** The cautions were acknowledged in an earlier sitting. */
  readonly cautionsRead?: boolean;
  onCautionsRead?(): void;
  /** The point a trial stands at; it follows when another is named. A round walks by itself. */
  readonly at?: string;
  /** After every change, with everything written so far. */
  onAnswersChange?(filled: Filled): void;
  /** Without it the form is a trial: nothing can be finished. */
  onFinish?(finished: FinishedFilling): void | Promise<void>;
  /** Set around the form: `<Page dock={dock}>…{page}</Page>`. */
  frame(parts: FormParts): ReactNode;
  /** Printed on the finish page: what is due next and why. */
  nextDue?(judgement: Judgement): ReactNode;
  /** Printed above the last button: signature, name, time, instrument. */
  readonly signature?: ReactNode;
  /** Milliseconds UTC: waits, and when a sample was taken. A trial takes the browser's own. */
  now?(): number;
  /** Today at the asset, ISO civil date; without it the day of `now` where the reader is. */
  readonly on?: string;
  /** Name of the person at work, offered where a name is asked for. */
  readonly signer?: string;
  /** Wall time in words ("10:42"), for "Declared by you at 10:42". */
  clock?(): string;
  readonly leftHanded?: boolean;
  /** `o` and `n` answer a check; on unless turned off. */
  readonly singleKeys?: boolean;
}
