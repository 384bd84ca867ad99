import type { PointKind } from "@roundbook/schemas";
import { CheckField } from "./check-field.tsx";
import { ChoiceField } from "./choice-field.tsx";
import type { FieldKind } from "./field.ts";
import { GradedField } from "./graded-field.tsx";
import { PhotoField } from "./photo-field.tsx";
import { isDoubtful } from "./reading-entry.ts";
import { ReadingField } from "./reading-field.tsx";
import { ReadingPad } from "./reading-pad.tsx";
import { TextField } from "./text-field.tsx";

export const FIELD_KINDS: Readonly<Record<PointKind, FieldKind>> = {
  check: { Body: CheckField },
  choice: { Body: ChoiceField },
  graded: { Body: GradedField },
  reading: { Body: ReadingField, Dock: ReadingPad, holds: isDoubtful },
  text: { Body: TextField },
  photo: { Body: PhotoField },
};
