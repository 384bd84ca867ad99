import {
  Button,
  Buttons,
  FieldPair,
  LeafWords,
  LineField,
  PlaceHeading,
  SelectField,
} from "@roundbook/runner/form";
import { ABSENCE_REASONS, type ImportReport } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { es } from "../messages/estate.ts";
import {
  answerColumns,
  firstFields,
  formatOf,
  type MappingFields,
  mappingOf,
  particularColumns,
  type Uploaded,
} from "../model/mapping-fields.ts";
import { sendJson } from "./client.ts";
import { ImportResult } from "./import-result.tsx";
import { useAssetTypes, useChecklists, usePlaces } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

const FORMATS = ["YYYY-MM-DD", "DD/MM/YYYY", "MM/DD/YYYY", "DD.MM.YYYY", "D MMM YYYY"] as const;

/** Which column says what; then a trial, and only then the import. */
export const ImportMappingForm = ({ file }: { readonly file: Uploaded }) => {
  const types = useAssetTypes().data ?? [];
  const checklists = (useChecklists().data ?? []).filter((one) => one.status === "issued");
  const sites = (usePlaces().data ?? []).filter((place) => place.level === "site");
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  const [report, setReport] = useState<ImportReport>();
  const [working, setWorking] = useState(false);
  const form = useForm<MappingFields>({ defaultValues: firstFields(file) });
  const { register, watch, setValue } = form;
  const fields = watch();
  const type = types.find((one) => one.assetType === fields.assetType);
  const document = checklists.find((one) => one.id === fields.checklist)?.document;
  const mapping = mappingOf(fields, document);
  const columns = file.columns.map((column) => ({ value: column, label: column }));
  const column = (name: "key" | "number" | "description" | "serial" | "date", label: string) => (
    <SelectField label={label} none={es("import.none")} options={columns} {...register(name)} />
  );
  const run = (verb: "trial" | "run") =>
    guard(async () => {
      if (!mapping) return;
      setWorking(true);
      setReport(undefined);
      try {
        setReport(await sendJson<ImportReport>("POST", `/api/imports/${file.id}/${verb}`, mapping));
        if (verb === "run") await queries.invalidateQueries();
      } finally {
        setWorking(false);
      }
    });
  if (types.length === 0) return <LeafWords>{es("import.needs-type")}</LeafWords>;
  return (
    <form noValidate onSubmit={(event) => event.preventDefault()}>
      <PlaceHeading title={es("import.what")} />
      <LeafWords>
        <FieldPair>
          <SelectField
            label={es("import.what")}
            options={(["register", "results"] as const).map((value) => ({
              value,
              label: es(`import.what-${value}`),
            }))}
            {...register("kind")}
          />
          <SelectField
            label={es("import.type")}
            none={es("asset.choose")}
            options={types.map((one) => ({ value: one.assetType, label: one.title }))}
            {...register("assetType", {
              onChange: (event) =>
                setValue(
                  "particulars",
                  particularColumns(
                    file,
                    types.find((one) => one.assetType === event.target.value),
                  ),
                ),
            })}
          />
        </FieldPair>
        <LineField
          label={es("import.source")}
          help={es("import.source-help")}
          {...register("source")}
        />
        <SelectField
          label={es("import.key")}
          none={es("import.key-none")}
          options={columns}
          {...register("key")}
        />
      </LeafWords>
      <PlaceHeading title={es("import.map")} />
      <LeafWords>
        <FieldPair>
          {column("number", es("import.number"))}
          {column("description", es("import.description"))}
        </FieldPair>
        <FieldPair>
          <SelectField
            label={es("import.site")}
            none={es("import.none")}
            options={sites.map((site) => ({ value: site.name, label: site.name }))}
            {...register("site")}
          />
          <LineField label={es("import.place")} {...register("place")} />
        </FieldPair>
        <FieldPair>
          {column("serial", es("import.serial"))}
          <SelectField
            label={es("import.decimal")}
            options={[
              { value: ".", label: es("import.point") },
              { value: ",", label: es("import.comma") },
            ]}
            {...register("decimal")}
          />
        </FieldPair>
        {Object.entries(type?.particulars ?? {}).map(([name, { title }]) => (
          <SelectField
            key={name}
            label={title}
            none={es("import.none")}
            options={columns}
            {...register(`particulars.${name}`)}
          />
        ))}
        {fields.kind === "results" && (
          <>
            <SelectField
              label={es("import.checklist")}
              none={es("asset.choose")}
              options={checklists.map((one) => ({ value: one.id, label: one.document.title }))}
              {...register("checklist", {
                onChange: (event) =>
                  setValue(
                    "answers",
                    answerColumns(
                      file,
                      checklists.find((one) => one.id === event.target.value)?.document,
                    ),
                  ),
              })}
            />
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
                none={es("asset.choose")}
                options={FORMATS.map((value) => ({ value, label: value }))}
                {...register("format")}
              />
            </FieldPair>
            <label className="desk-tick">
              <input type="checkbox" {...register("createAssets")} />
              <span>{es("import.create")}</span>
            </label>
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
              <LineField label={es("import.words")} {...register("words")} />
            </FieldPair>
            {Object.entries(document?.properties ?? {}).map(([name, point]) => (
              <SelectField
                key={name}
                label={point.title}
                none={es("import.none")}
                options={columns}
                {...register(`answers.${name}`)}
              />
            ))}
          </>
        )}
        {refused}
        {working && <p role="status">{es("import.working")}</p>}
      </LeafWords>
      <Buttons>
        <Button
          kind={report?.trial ? "secondary" : "primary"}
          disabled={!mapping || working}
          onClick={() => void run("trial")}
        >
          {es("import.try")}
        </Button>
        <Button
          kind={report?.trial ? "primary" : "secondary"}
          disabled={!mapping || working || !report?.trial}
          onClick={() => void run("run")}
        >
          {es("import.run")}
        </Button>
      </Buttons>
      {report && <ImportResult report={report} />}
    </form>
  );
};
