import { FieldPair, LeafWords, LineField, PlaceHeading, SelectField } from "@roundbook/runner/form";
import type { Checklist } from "@roundbook/schemas";
import type { UseFormReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import { answerable } from "../model/answerable.ts";
import { CHECK_MEANINGS } from "../model/mapping-answers.ts";
import { formatOf, type MappingFields, type Uploaded } from "../model/mapping-fields.ts";
import { PointFields } from "./import-point-fields.tsx";

const FORMATS = ["YYYY-MM-DD", "DD/MM/YYYY", "MM/DD/YYYY", "DD.MM.YYYY", "D MMM YYYY"] as const;

/** Which columns say when it was done and what was found, in the order of the checklist's page. */
export const AnswerFields = ({
  file,
  document,
  form,
}: {
  readonly file: Uploaded;
  readonly document: Checklist;
  readonly form: UseFormReturn<MappingFields>;
}) => {
  const { register, setValue, watch } = form;
  const columns = file.columns.map((column) => ({ value: column, label: column }));
  const unsure = watch("date") !== "" && formatOf(file, watch("date")) === "";
  const hasChecks = Object.values(document.properties).some(({ $ref }) => $ref === "#/$defs/check");
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
            help={unsure ? es("import.format-unsure") : undefined}
            none={es("import.format-none")}
            options={FORMATS.map((value) => ({ value, label: es(`import.format-${value}`) }))}
            {...register("format")}
          />
        </FieldPair>
        {hasChecks && (
          <FieldPair>
            {CHECK_MEANINGS.map((value, at) => (
              <LineField
                key={value}
                label={es(`import.words-${value}`)}
                help={es(`import.words-${value}-help`)}
                autoComplete="off"
                {...register(`checkWords.${at}`)}
              />
            ))}
          </FieldPair>
        )}
      </LeafWords>
      {answerable(document).map(({ name, point, title }) => (
        <PointFields key={name} {...{ name, point, title, columns, form }} />
      ))}
    </>
  );
};
