import {
  Button,
  Buttons,
  FieldPair,
  LeafWords,
  PlaceHeading,
  SelectField,
} from "@roundbook/runner/form";
import type { ImportReport } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { type ReactNode, useState } from "react";
import { useForm } from "react-hook-form";
import { es } from "../messages/estate.ts";
import {
  definitionsOf,
  firstFields,
  type MappingFields,
  makesAssets,
  mappingOf,
  type Uploaded,
  type Wanting,
  wanting,
} from "../model/mapping-fields.ts";
import { sendJson } from "./client.ts";
import { AnswerFields } from "./import-answer-fields.tsx";
import { AssetFields } from "./import-asset-fields.tsx";
import { ListFields } from "./import-list-fields.tsx";
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
  const { register, watch } = form;
  const fields = watch();
  const definitions = definitionsOf(types, fields.assetType);
  const document = checklists.find((one) => one.id === fields.checklist)?.document;
  const wants = wanting(fields, document, sites.length);
  const mapping = wants ? null : mappingOf(fields, document);
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
    <form className="mapping" noValidate onSubmit={(event) => event.preventDefault()}>
      <ListFields {...{ file, types, checklists, form }} />
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
        {makesAssets(fields) && <AssetFields {...{ file, definitions, sites, form }} />}
      </LeafWords>
      {fields.kind === "results" && document && <AnswerFields {...{ file, document, form }} />}
      <LeafWords>
        {types.length === 0 && <p>{es("import.needs-type")}</p>}
        {wants && <p className="second">{wantWords(wants)}</p>}
        {refused}
        {working && <p role="status">{es("import.working")}</p>}
      </LeafWords>
      {(tried || report?.report.trial === false) && report && (
        <ImportResult report={report.report} />
      )}
    </form>,
    dock,
  );
};

const wantWords = (wants: Wanting): string => {
  switch (wants.what) {
    case "unit":
      return es("import.wants-unit", { point: wants.point });
    case "word":
      return es("import.wants-word", { point: wants.point, word: wants.word });
    default:
      return es(`import.wants-${wants.what}`);
  }
};
