import {
  Button,
  Buttons,
  LeafWords,
  LineField,
  Loading,
  PlaceHeading,
  StateLine,
  TitleBlock,
  WordButton,
  WordLink,
  WordList,
} from "@roundbook/runner/form";
import type { AssetTypeBody, AssetTypeRow, ChecklistRow, SaveAssetType } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { useFieldArray, useForm } from "react-hook-form";
import { useLocation, useParams } from "wouter";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { nameFor } from "../model/names.ts";
import {
  EMPTY_FIELD,
  fromFields,
  type ParticularField,
  toFields,
} from "../model/particular-fields.ts";
import { Refusal, sendJson } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { ParticularLine, type TypeFields } from "./particular-line.tsx";
import { useAssetTypes, useChecklists } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

/** An asset type: what is known of each asset, and which checklists are for it. */
export const TypePage = () => {
  const { name = "new" } = useParams<{ name: string }>();
  const types = useAssetTypes();
  const checklists = useChecklists();
  // Held above the form, which begins anew under the name a new type gets.
  const [saved, setSaved] = useState<number>();
  const row = types.data?.find((one) => one.assetType === name);
  if (!types.data || !checklists.data) {
    return (
      <DeskPage current="asset-types">
        <Loading label={d("app.opening")} />
      </DeskPage>
    );
  }
  return (
    <TypeForm
      key={name}
      {...{ row, types: types.data, checklists: checklists.data, saved, setSaved }}
    />
  );
};

const TypeForm = ({
  row,
  types,
  checklists,
  saved,
  setSaved,
}: {
  readonly row: AssetTypeRow | undefined;
  readonly types: readonly AssetTypeRow[];
  readonly checklists: readonly ChecklistRow[];
  readonly saved: number | undefined;
  setSaved(version: number | undefined): void;
}) => {
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  // What is written here was written over this one, whatever the list says by now.
  const [read, setRead] = useState(row);
  const [over, setOver] = useState(row?.version ?? 0);
  const [theirs, setTheirs] = useState<AssetTypeRow>();
  const notice = useRef<HTMLDivElement>(null);
  // The button is docked at the foot of a long page, what it was refused for stands at its head.
  useEffect(() => {
    if (theirs) notice.current?.scrollIntoView({ block: "center" });
  }, [theirs]);
  const form = useForm<TypeFields>({ defaultValues: fieldsOf(row) });
  const { register, control, formState, watch } = form;
  const lines = useFieldArray({ control, name: "particulars" });
  const chosen = watch("checklists");
  const written = watch("particulars");
  const wanted = wantedBy(checklists, chosen, written);
  const submit = form.handleSubmit((fields) =>
    guard(async () => {
      const taken = new Set(types.map((one) => one.assetType));
      const assetType = row?.assetType ?? nameFor(fields.title, taken, "asset");
      const body: AssetTypeBody = {
        assetType,
        title: fields.title.trim(),
        particulars: fromFields(fields.particulars, read?.particulars),
        checklists: fields.checklists,
      };
      const given: SaveAssetType = { ...body, version: over };
      setTheirs(undefined);
      try {
        const { version } = await sendJson<{ version: number }>(
          "PUT",
          `/api/asset-types/${assetType}`,
          given,
        );
        setRead({ ...body, version });
        setOver(version);
        setSaved(version);
      } catch (error) {
        setSaved(undefined);
        if (!(error instanceof Refusal) || error.code !== CHANGED) throw error;
        setTheirs((error.reply as unknown as { current: AssetTypeRow }).current);
      } finally {
        // A name that is taken by now, or a version that is newer, is known from here on.
        await queries.invalidateQueries({ queryKey: ["asset-types"] });
      }
      if (!row) navigate(`/asset-types/${assetType}`, { replace: true });
    }),
  );
  return (
    <DeskPage
      current="asset-types"
      dock={
        <Buttons>
          <Button kind="primary" disabled={formState.isSubmitting} onClick={() => void submit()}>
            {d("types.save")}
          </Button>
        </Buttons>
      }
    >
      <TitleBlock
        number={read ? String(read.version) : undefined}
        title={watch("title") || d("types.new")}
        second={read && d("types.version", { version: read.version })}
        actionsAbove
        actions={
          <WordLink href="/designer/asset-types" onFollow={() => navigate("/asset-types")}>
            {d("types.title")}
          </WordLink>
        }
      />
      {saved !== undefined && <StateLine>{d("types.saved", { version: saved })}</StateLine>}
      {theirs && (
        <div ref={notice}>
          <StateLine>
            {d("types.changed", { version: theirs.version })}
            <WordList>
              <WordButton
                onClick={() => {
                  form.reset(fieldsOf(theirs));
                  setRead(theirs);
                  setOver(theirs.version);
                  setTheirs(undefined);
                }}
              >
                {e("ed.take-theirs")}
              </WordButton>
              {/* It is put in force by the button below, now after what the other wrote. */}
              <WordButton
                onClick={() => {
                  setOver(theirs.version);
                  setTheirs(undefined);
                }}
              >
                {e("ed.keep-newest")}
              </WordButton>
            </WordList>
          </StateLine>
        </div>
      )}
      <form onSubmit={submit} noValidate>
        <LeafWords>
          <LineField
            label={d("types.name")}
            autoComplete="off"
            error={formState.errors.title && d("field.needed")}
            {...register("title", { validate: (title) => title.trim() !== "" })}
          />
          {refused}
        </LeafWords>
        <PlaceHeading title={d("types.checklists")} />
        <LeafWords>
          {checklists.length === 0 && <p>{d("types.no-checklists")}</p>}
          {checklists
            .filter((one) => one.status === "issued" || chosen.includes(one.id))
            .map((one) => (
              <label key={one.id} className="desk-tick">
                <input type="checkbox" value={one.id} {...register("checklists")} />
                <span>{one.document.title}</span>
              </label>
            ))}
        </LeafWords>
        <PlaceHeading title={d("types.particulars")} aside={String(lines.fields.length)} />
        <LeafWords>
          <p className="second">{d("types.particulars-about")}</p>
        </LeafWords>
        {lines.fields.map((line, at) => (
          <ParticularLine
            key={line.id}
            {...{ at, register }}
            unitWrong={formState.errors.particulars?.[at]?.unit !== undefined}
            kind={written[at]?.kind ?? "number"}
            title={written[at]?.title ?? ""}
            choices={(written[at]?.choices ?? "").trim() !== ""}
            onRemove={() => lines.remove(at)}
          />
        ))}
        <LeafWords>
          <WordButton onClick={() => lines.append(EMPTY_FIELD)}>{d("types.add")}</WordButton>
          {wanted.length > 0 && (
            <p>
              <WordButton onClick={() => lines.append(wanted)}>
                {d("types.from-checklists", {
                  names: wanted.map((one) => one.title).join(", "),
                })}
              </WordButton>
            </p>
          )}
        </LeafWords>
      </form>
    </DeskPage>
  );
};

const CHANGED = "asset-type-changed-meanwhile";

const fieldsOf = (row: AssetTypeRow | undefined): TypeFields => ({
  title: row?.title ?? "",
  particulars: row ? toFields(row.particulars) : [],
  checklists: [...(row?.checklists ?? [])],
});

/** Particulars that the chosen checklists need and the type does not have yet. */
const wantedBy = (
  checklists: readonly ChecklistRow[],
  chosen: readonly string[],
  written: readonly ParticularField[],
): ParticularField[] => {
  const have = new Set(Object.keys(fromFields(written)));
  const wanted = new Map<string, ParticularField>();
  for (const row of checklists) {
    if (!chosen.includes(row.id)) continue;
    for (const field of toFields(row.document.particulars ?? {}))
      if (!have.has(field.name)) wanted.set(field.name, field);
  }
  return [...wanted.values()];
};
