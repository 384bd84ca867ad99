import { FieldPair, LeafWords, LineField, PlaceHeading, SelectField } from "@roundbook/runner/form";
import { ABSENCE_REASONS, type Checklist } from "@roundbook/schemas";
import type { UseFormReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import { pageOrder } from "../model/commands.ts";
import { formatOf, type MappingFields, type Uploaded } from "../model/mapping-fields.ts";

const FORMATS = ["YYYY-MM-DD", "DD/MM/YYYY", "MM/DD/YYYY", "DD.MM.YYYY", "D MMM YYYY"] as const;

/** Which columns say when it was done and what was found, in the order of the checklist's page. */
export const AnswerFields = ({
  file,
  document,
  form: { register, setValue },
}: {
  readonly file: Uploaded;
  readonly document: Checklist;
  readonly form: UseFormReturn<MappingFields>;
}) => {
  const columns = file.columns.map((column) => ({ value: column, label: column }));
  const points = pageOrder(document).flatMap((part) => part.points);
  return (
    <>
      <PlaceHeading title={es("import.answers")} />
      <LeafWords>
        <FieldPair>
          <SelectField
            label={es("import.date")}
            none={es("import.none")}
            options={columns}
            {...register("date", {
              onChange: (event) => setValue("format", formatOf(file, event.target.value)),
            })}
          />
          <SelectField
            label={es("import.format")}
            none={es("import.format-none")}
            options={FORMATS.map((value) => ({ value, label: value }))}
            {...register("format")}
          />
        </FieldPair>
        <FieldPair>
          <SelectField
            label={es("import.empty")}
            none={es("import.empty-none")}
            options={ABSENCE_REASONS.map((value) => ({
              value,
              label: es(`import.empty-${value}`),
            }))}
            {...register("empty")}
          />
          <LineField
            label={es("import.words")}
            help={es("import.words-help")}
            autoComplete="off"
            {...register("words")}
          />
        </FieldPair>
        {points.map((name) => {
          const point = document.properties[name];
          // No cell of a file is a photo.
          if (!point || point.$ref === "#/$defs/photo") return null;
          return (
            <SelectField
              key={name}
              label={point.title}
              none={es("import.none")}
              options={columns}
              {...register(`answers.${name}`)}
            />
          );
        })}
      </LeafWords>
    </>
  );
};
