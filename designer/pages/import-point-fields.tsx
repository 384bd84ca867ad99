import {
  FieldPair,
  LeafWords,
  LineField,
  PlaceHeading,
  printUnit,
  SelectField,
  WordButton,
} from "@roundbook/runner/form";
import { ABSENCE_REASONS, type PointDefinition } from "@roundbook/schemas";
import { useState } from "react";
import type { UseFormReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import { optionsOf } from "../model/draft-document.ts";
import { type Meaning, meaningsOf, unitsOf } from "../model/mapping-answers.ts";
import type { MappingFields } from "../model/mapping-fields.ts";

const meaningWords = ({ value, title }: Meaning): string => {
  if (title !== null) return title;
  return value === "ok" ? es("import.ok") : es(value === "not-ok" ? "import.not-ok" : "import.na");
};

/** What one point is answered from: its column, what nothing means, the unit, the file's words. */
export const PointFields = ({
  name,
  point,
  title,
  columns,
  form: { register, watch },
}: {
  readonly name: string;
  readonly point: PointDefinition;
  /** With the member's, in a repeat. */
  readonly title: string;
  readonly columns: readonly { readonly value: string; readonly label: string }[];
  readonly form: UseFormReturn<MappingFields>;
}) => {
  const [open, setOpen] = useState(optionsOf(point).length > 0);
  const units = unitsOf(point);
  const meanings = meaningsOf(point);
  const answered = Boolean(watch(`answers.${name}.column`));
  return (
    <fieldset aria-label={title}>
      <PlaceHeading level={3} title={title} />
      <LeafWords>
        <FieldPair>
          <SelectField
            label={es("import.column")}
            none={es("import.none")}
            options={columns}
            {...register(`answers.${name}.column`)}
          />
          {answered && (
            <SelectField
              label={es("import.empty")}
              none={es("import.empty-none")}
              options={ABSENCE_REASONS.map((value) => ({
                value,
                label: es(`import.empty-${value}`),
              }))}
              {...register(`answers.${name}.empty`)}
            />
          )}
        </FieldPair>
        {answered && units.length > 0 && (
          <SelectField
            label={es("import.unit")}
            none={units.length > 1 ? es("import.unit-none") : undefined}
            options={units.map((unit) => ({ value: unit, label: printUnit(unit) || unit }))}
            {...register(`answers.${name}.unit`)}
          />
        )}
        {answered && meanings.length > 0 && (
          <WordButton quiet aria-expanded={open} onClick={() => setOpen(!open)}>
            {es(open ? "import.words-close" : "import.words-open")}
          </WordButton>
        )}
        {answered &&
          open &&
          meanings.map((meaning, at) => (
            <LineField
              key={meaning.value}
              label={es("import.words-for", { meaning: meaningWords(meaning) })}
              autoComplete="off"
              {...register(`answers.${name}.words.${at}`)}
            />
          ))}
      </LeafWords>
    </fieldset>
  );
};
