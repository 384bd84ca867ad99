import {
  Button,
  FieldPair,
  LeafWords,
  LineField,
  printUnit,
  SelectField,
  StateLine,
} from "@roundbook/runner/form";
import { type AssetTypeRow, type Particulars, particularsInOrder } from "@roundbook/schemas";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { d } from "../messages/desk.ts";
import { es } from "../messages/estate.ts";
import { readNumber } from "../model/particular-fields.ts";
import { sendJson } from "./client.ts";
import { pathOf } from "./estate-places.tsx";
import { usePlaces } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

interface AssetFields {
  number: string;
  assetType: string;
  description: string;
  place: string;
  serial: string;
  particulars: Record<string, string>;
}

const EMPTY: AssetFields = {
  number: "",
  assetType: "",
  description: "",
  place: "",
  serial: "",
  particulars: {},
};

const numeric = (type: AssetTypeRow | undefined, name: string): boolean => {
  const definition = type?.particulars[name];
  return definition?.type === "number" || typeof definition?.enum?.[0] === "number";
};

const particularsOf = (
  type: AssetTypeRow | undefined,
  typed: Readonly<Record<string, string>>,
): Particulars =>
  Object.fromEntries(
    Object.keys(type?.particulars ?? {}).flatMap((name) => {
      const text = typed[name]?.trim() ?? "";
      if (text === "") return [];
      const number = readNumber(text);
      return [[name, numeric(type, name) && number !== undefined ? number : text] as const];
    }),
  );

/** Registers one asset at the desk; on the round the runner does it. */
export const AddAsset = ({ types }: { readonly types: readonly AssetTypeRow[] }) => {
  const places = usePlaces().data ?? [];
  const { refused, guard } = useRefused();
  const [added, setAdded] = useState<string>();
  const form = useForm<AssetFields>({ defaultValues: EMPTY });
  const { register, formState, watch } = form;
  const type = types.find((one) => one.assetType === watch("assetType"));
  const needed = (value: string) => value.trim() !== "" || d("field.needed");
  const submit = form.handleSubmit((fields) =>
    guard(async () => {
      const serial = fields.serial.trim();
      await sendJson("POST", "/api/assets", {
        number: fields.number.trim(),
        assetType: fields.assetType,
        description: fields.description.trim(),
        place: fields.place,
        particulars: particularsOf(type, fields.particulars),
        ...(serial === "" ? {} : { serial }),
      });
      setAdded(fields.number.trim());
      form.reset({ ...EMPTY, assetType: fields.assetType, place: fields.place });
    }),
  );
  if (types.length === 0 || places.length === 0)
    return (
      <LeafWords>
        <p className="second">{es("asset.no-types")}</p>
      </LeafWords>
    );
  return (
    <form onSubmit={submit} noValidate aria-label={es("asset.add")}>
      {added && <StateLine>{es("asset.added", { number: added })}</StateLine>}
      <LeafWords>
        <h3>{es("asset.add")}</h3>
        <FieldPair>
          <LineField
            label={es("asset.number")}
            autoComplete="off"
            error={formState.errors.number?.message}
            {...register("number", { validate: needed })}
          />
          <LineField
            label={es("asset.description")}
            autoComplete="off"
            error={formState.errors.description?.message}
            {...register("description", { validate: needed })}
          />
        </FieldPair>
        <FieldPair>
          <SelectField
            label={es("asset.type")}
            none={es("asset.choose")}
            options={types.map((one) => ({ value: one.assetType, label: one.title }))}
            error={formState.errors.assetType?.message}
            {...register("assetType", { validate: needed })}
          />
          <SelectField
            label={es("asset.place")}
            none={es("asset.choose")}
            options={places.map((place) => ({ value: place.id, label: pathOf(places, place) }))}
            error={formState.errors.place?.message}
            {...register("place", { validate: needed })}
          />
        </FieldPair>
        {particularsInOrder(type?.particulars ?? {}).map(([name, definition]) =>
          definition.enum ? (
            <SelectField
              key={name}
              label={definition.title}
              none={es("asset.choose")}
              options={definition.enum.map((one) => ({ value: String(one), label: String(one) }))}
              {...register(`particulars.${name}`)}
            />
          ) : (
            <LineField
              key={name}
              label={definition.title}
              trail={definition.unit && printUnit(definition.unit)}
              autoComplete="off"
              error={formState.errors.particulars?.[name] && es("asset.no-number")}
              {...register(`particulars.${name}`, {
                validate: (text) =>
                  !numeric(type, name) || !text?.trim() || readNumber(text) !== undefined,
              })}
            />
          ),
        )}
        <LineField label={es("asset.serial")} autoComplete="off" {...register("serial")} />
        {refused}
        <Button kind="secondary" type="submit" disabled={formState.isSubmitting}>
          {es("asset.go")}
        </Button>
      </LeafWords>
    </form>
  );
};
