import {
  Button,
  Buttons,
  FieldPair,
  LeafWords,
  LineField,
  PlaceHeading,
  SelectField,
} from "@roundbook/runner/form";
import type { ImportReport } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { type ReactNode, useState } from "react";
import { useForm } from "react-hook-form";
import { es } from "../messages/estate.ts";
import {
  answerColumns,
  firstFields,
  type MappingFields,
  makesAssets,
  mappingOf,
  particularColumns,
  type Uploaded,
} from "../model/mapping-fields.ts";
import { sendJson } from "./client.ts";
import { AnswerFields } from "./import-answer-fields.tsx";
import { AssetFields } from "./import-asset-fields.tsx";
import { ImportResult } from "./import-result.tsx";
import { useAssetTypes, useChecklists, usePlaces } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

interface MappingProps {
  readonly file: Uploaded;
  /** Sets the form and the buttons at the foot in their places of the page. */
  frame(form: ReactNode, dock: ReactNode): ReactNode;
}

/** Which column says what; then a trial, and only then the import. */
export const ImportMapping = ({ file, frame }: MappingProps) => {
  const types = useAssetTypes().data ?? [];
  const checklists = (useChecklists().data ?? []).filter((one) => one.status === "issued");
  const sites = (usePlaces().data ?? []).filter((place) => place.level === "site");
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  const [report, setReport] = useState<{ readonly of: string; readonly report: ImportReport }>();
  const [working, setWorking] = useState(false);
  const form = useForm<MappingFields>({ defaultValues: firstFields(file) });
  const { register, watch, setValue } = form;
  const fields = watch();
  const type = types.find((one) => one.assetType === fields.assetType);
  const document = checklists.find((one) => one.id === fields.checklist)?.document;
  const mapping = mappingOf(fields, document);
  const columns = file.columns.map((column) => ({ value: column, label: column }));
  // A trial stands for the mapping that was tried, and for no other.
  const tried = report?.report.trial === true && report.of === JSON.stringify(mapping);
  const run = (verb: "trial" | "run") =>
    guard(async () => {
      if (!mapping) return;
      setWorking(true);
      setReport(undefined);
      try {
        const path = `/api/imports/${file.id}/${verb}`;
        const reply = await sendJson<ImportReport>("POST", path, mapping);
        setReport({ of: JSON.stringify(mapping), report: reply });
        if (verb === "run") await queries.invalidateQueries();
      } finally {
        setWorking(false);
      }
    });
  const dock = (
    <Buttons>
      <Button
        kind={tried ? "secondary" : "primary"}
        disabled={!mapping || working}
        onClick={() => void run("trial")}
      >
        {es("import.try")}
      </Button>
      <Button
        kind={tried ? "primary" : "secondary"}
        disabled={working || !tried}
        onClick={() => void run("run")}
      >
        {es("import.run")}
      </Button>
    </Buttons>
  );
  return frame(
    <form noValidate onSubmit={(event) => event.preventDefault()}>
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
                  setValue("answers", answerColumns(file, chosen?.document));
                },
              })}
            />
          )}
          {makesAssets(fields) && (
            <SelectField
              label={es("import.type")}
              none={es("import.choose-one")}
              options={types.map((one) => ({ value: one.assetType, label: one.title }))}
              {...register("assetType", {
                onChange: (event) => {
                  const chosen = types.find((one) => one.assetType === event.target.value);
                  setValue("particulars", particularColumns(file, chosen));
                },
              })}
            />
          )}
        </FieldPair>
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
      <PlaceHeading title={es("import.map")} />
      <LeafWords>
        <FieldPair>
          <SelectField
            label={es("import.number")}
            none={es("import.none")}
            options={columns}
            {...register("number")}
          />
          <SelectField
            label={es("import.decimal")}
            options={[
              { value: ".", label: es("import.point") },
              { value: ",", label: es("import.comma") },
            ]}
            {...register("decimal")}
          />
        </FieldPair>
        {fields.kind === "results" && (
          <label className="desk-tick">
            <input type="checkbox" {...register("createAssets")} />
            <span>{es("import.create")}</span>
          </label>
        )}
        {makesAssets(fields) && <AssetFields {...{ file, type, sites, form }} />}
      </LeafWords>
      {fields.kind === "results" && document && <AnswerFields {...{ file, document, form }} />}
      <LeafWords>
        {types.length === 0 && <p>{es("import.needs-type")}</p>}
        {refused}
        {working && <p role="status">{es("import.working")}</p>}
      </LeafWords>
      {report && <ImportResult report={report.report} />}
    </form>,
    dock,
  );
};
