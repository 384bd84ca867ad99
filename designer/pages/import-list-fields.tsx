import { FieldPair, LeafWords, LineField, PlaceHeading, SelectField } from "@roundbook/runner/form";
import type { AssetTypeRow, ChecklistRow } from "@roundbook/schemas";
import type { UseFormReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import { firstAnswers } from "../model/mapping-answers.ts";
import {
  definitionsOf,
  type MappingFields,
  makesAssets,
  particularColumns,
  TYPE_BY_COLUMN,
  type Uploaded,
} from "../model/mapping-fields.ts";

/** What the list is: of assets or of results, of which type, judged by what, known by what name. */
export const ListFields = ({
  file,
  types,
  checklists,
  form: { register, setValue, watch },
}: {
  readonly file: Uploaded;
  readonly types: readonly AssetTypeRow[];
  readonly checklists: readonly ChecklistRow[];
  readonly form: UseFormReturn<MappingFields>;
}) => {
  const fields = watch();
  const columns = file.columns.map((column) => ({ value: column, label: column }));
  return (
    <>
      <PlaceHeading title={es("import.what")} />
      <LeafWords>
        <FieldPair>
          <SelectField
            label={es("import.each")}
            options={(["register", "results"] as const).map((value) => ({
              value,
              label: es(`import.what-${value}`),
            }))}
            {...register("kind")}
          />
          {fields.kind === "results" && (
            <SelectField
              label={es("import.checklist")}
              none={es("import.choose-one")}
              options={checklists.map((one) => ({ value: one.id, label: one.document.title }))}
              {...register("checklist", {
                onChange: (event) => {
                  const chosen = checklists.find((one) => one.id === event.target.value);
                  setValue("answers", firstAnswers(file.columns, chosen?.document));
                },
              })}
            />
          )}
        </FieldPair>
        {makesAssets(fields) && (
          <FieldPair>
            <SelectField
              label={es("import.type")}
              none={es("import.choose-one")}
              options={[
                ...types.map((one) => ({ value: one.assetType, label: one.title })),
                { value: TYPE_BY_COLUMN, label: es("import.type-column") },
              ]}
              {...register("assetType", {
                onChange: (event) => {
                  const known = definitionsOf(types, event.target.value);
                  setValue("particulars", particularColumns(file, known));
                },
              })}
            />
            {fields.assetType === TYPE_BY_COLUMN && (
              <SelectField
                label={es("import.type-in")}
                help={es("import.type-in-help", {
                  names: types.map((one) => one.assetType).join(", "),
                })}
                none={es("import.none")}
                options={columns}
                {...register("typeColumn")}
              />
            )}
          </FieldPair>
        )}
        <FieldPair>
          <LineField
            label={es("import.source")}
            help={es("import.source-help")}
            autoComplete="off"
            {...register("source")}
          />
          <SelectField
            label={es("import.key")}
            none={es("import.key-none")}
            options={columns}
            {...register("key")}
          />
        </FieldPair>
      </LeafWords>
    </>
  );
};
