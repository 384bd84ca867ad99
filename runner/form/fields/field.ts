import type { Answer, LimitJudgement, PointJudgement } from "@roundbook/schemas";
import type { ComponentType } from "react";
import type { FormPoint } from "../model/sections.ts";

/** A reading a person took on this point before: shown as a hollow dot, never filled in. */
export interface LastReading {
  readonly value: number;
  readonly unit: string;
  readonly comparator?: string;
  /** ISO civil date. */
  readonly on?: string;
}

/** How photos leave the form and come back to be shown. */
export interface PhotoDoor {
  keepPhoto(blob: Blob): Promise<{ readonly sha256: string }>;
  /** An address to show a kept photo from, or `undefined` when it is not on this device. */
  photoUrl(sha256: string): Promise<string | undefined>;
}

/** What stands in a reading box before it is an answer: "0." is not one yet. */
export interface Draft {
  readonly text: string;
  readonly unit: string;
  /** The person was asked whether an unusual reading is right. */
  readonly asked: boolean;
  /** The person said it is. */
  readonly sure: boolean;
}

export interface Ahead {
  readonly label: string;
  go(): void;
}

export interface FieldProps {
  readonly point: FormPoint;
  readonly answer: Answer | undefined;
  onAnswer(answer: Answer | undefined): void;
  readonly judgement: PointJudgement | undefined;
  /** The limits that apply now, known before anything is written; never a verdict. */
  readonly limits: readonly LimitJudgement[];
  readonly last: LastReading | undefined;
  readonly draft: Draft;
  onDraft(draft: Draft): void;
  /** Opens the sheet of reasons for giving no answer. */
  onAbsent(): void;
  readonly photos: PhotoDoor;
}

export interface FieldDockProps extends FieldProps {
  readonly ahead: Ahead;
  readonly leftHanded: boolean;
}

/** One kind of point on the form. `Dock` takes the place of the plain buttons at the foot. */
export interface FieldKind {
  readonly Body: ComponentType<FieldProps>;
  readonly Dock?: ComponentType<FieldDockProps>;
  /** True while something about the answer must be confirmed before going on. */
  holds?(props: Pick<FieldProps, "point" | "answer" | "draft">): boolean;
}
