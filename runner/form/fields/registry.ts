import type { PointKind } from "@roundbook/schemas";
import { CalculatedField } from "./calculated-field.tsx";
import { CheckField } from "./check-field.tsx";
import { ChoiceField } from "./choice-field.tsx";
import { ChoicesField } from "./choices-field.tsx";
import { CountField } from "./count-field.tsx";
import { DateField } from "./date-field.tsx";
import type { FieldKind } from "./field.ts";
import { GradedField } from "./graded-field.tsx";
import { PhotoField } from "./photo-field.tsx";
import { stepOf } from "./reading-entry.ts";
import { ReadingField } from "./reading-field.tsx";
import { ReadingPad } from "./reading-pad.tsx";
import { ReadingsField } from "./readings-field.tsx";
import { SampleField } from "./sample-field.tsx";
import { SignatureField } from "./signature-field.tsx";
import { TextField } from "./text-field.tsx";

export const FIELD_KINDS: Readonly<Record<PointKind, FieldKind>> = {
  check: { Body: CheckField },
  choice: { Body: ChoiceField },
  choices: { Body: ChoicesField },
  graded: { Body: GradedField },
  count: { Body: CountField },
  reading: { Body: ReadingField, Dock: ReadingPad, step: stepOf },
  readings: { Body: ReadingsField, Dock: ReadingPad, step: stepOf },
  date: { Body: DateField },
  text: { Body: TextField },
  photo: { Body: PhotoField },
  signature: { Body: SignatureField },
  sample: { Body: SampleField, step: stepOf },
  calculated: { Body: CalculatedField },
};
