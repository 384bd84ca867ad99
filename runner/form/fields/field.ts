import type { Answer, EvidenceItem, LimitJudgement, PointJudgement } from "@roundbook/schemas";
import type { ComponentType } from "react";
import type { Wait } from "../model/filled.ts";
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

/** What stands in one reading box before it is an answer: "0." is not one yet. */
export interface Box {
  readonly text: string;
  readonly unit: string;
  /** The person was asked whether an unusual reading is right. */
  readonly asked: boolean;
  /** The person said it is. */
  readonly sure: boolean;
  /** Seconds waited when it was read. */
  readonly elapsed?: number;
}

/** What is being written in the open point: one box, or one for each of several readings. */
export interface Draft {
  readonly boxes: readonly Box[];
  /** The box that is written in. */
  readonly at: number;
}

export interface Ahead {
  readonly label: string;
  go(): void;
}

export interface FieldProps {
  readonly point: FormPoint;
  readonly answer: Answer | undefined;
  onAnswer(answer: Answer | undefined): void;
  /** Photos and words beside the answer. */
  readonly items: readonly EvidenceItem[];
  onEvidence(items: readonly EvidenceItem[]): void;
  readonly judgement: PointJudgement | undefined;
  /** The limits that apply now, known before anything is written; never a verdict. */
  readonly limits: readonly LimitJudgement[];
  readonly last: LastReading | undefined;
  readonly draft: Draft;
  onDraft(draft: Draft): void;
  /** How many readings are asked for; unknown where that cannot be worked out. */
  readonly expected: number | undefined;
  readonly wait: Wait | undefined;
  onWait(wait: Wait | undefined): void;
  /** Milliseconds UTC, by the clock of the page. */
  now(): number;
  /** Today at the asset, ISO civil date. */
  readonly on: string;
  /** Name of the person at work, offered where a name is asked for and never filled in. */
  readonly signer: string | undefined;
  /** Opens the sheet of reasons for giving no answer. */
  onAbsent(): void;
  readonly photos: PhotoDoor;
}

export interface FieldDockProps extends FieldProps {
  readonly ahead: Ahead;
  readonly leftHanded: boolean;
}

/** What *Next* does inside the field before it leads on. */
export interface Step {
  readonly draft: Draft;
  /** The reading it goes to, counted from 1; absent when it only asks about the one written. */
  readonly to?: number;
}

/** One kind of point on the form. `Dock` takes the place of the plain buttons at the foot. */
export interface FieldKind {
  readonly Body: ComponentType<FieldProps>;
  readonly Dock?: ComponentType<FieldDockProps>;
  step?(props: Pick<FieldProps, "point" | "draft" | "expected">): Step | undefined;
}
