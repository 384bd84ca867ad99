import {
  Button,
  FieldPair,
  LeafWords,
  LineField,
  SelectField,
  StateLine,
  WordLink,
} from "@roundbook/runner/form";
import {
  type AssetTypeRow,
  type Particulars,
  type PlaceRow,
  particularsInOrder,
} from "@roundbook/schemas";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { es } from "../messages/estate.ts";
import { sendJson } from "./client.ts";
import { ParticularField, particularFits, particularOf } from "./estate-particular.tsx";
import { pathOf } from "./estate-places.tsx";
import { useFormRefused } from "./estate-refused.tsx";

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

const particularsOf = (
  type: AssetTypeRow | undefined,
  typed: Readonly<Record<string, string>>,
): Particulars =>
  Object.fromEntries(
    Object.entries(type?.particulars ?? {}).flatMap(([name, definition]) => {
      const value = particularOf(definition, typed[name]);
      return value === undefined ? [] : [[name, value] as const];
    }),
  );

/** Registers one asset at the desk; on the round the runner does it. */
export const AddAsset = ({
  types,
  places,
}: {
  readonly types: readonly AssetTypeRow[];
  readonly places: readonly PlaceRow[];
}) => {
  const [, navigate] = useLocation();
  const [added, setAdded] = useState<string>();
  const form = useForm<AssetFields>({ defaultValues: EMPTY });
  const { refused, guard } = useFormRefused(form);
  const { register, formState, setValue, watch } = form;
  const { errors } = formState;
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
  if (places.length === 0)
    return (
      <LeafWords>
        <p className="second">{es("asset.no-places")}</p>
      </LeafWords>
    );
  if (types.length === 0)
    return (
      <LeafWords>
        <p className="second">{es("asset.no-types")}</p>
        <WordLink href="/designer/asset-types" onFollow={() => navigate("/asset-types")}>
          {es("asset.to-types")}
        </WordLink>
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
            error={errors.number?.message}
            {...register("number", { validate: needed })}
          />
          <LineField
            label={es("asset.description")}
            autoComplete="off"
            error={errors.description?.message}
            {...register("description", { validate: needed })}
          />
        </FieldPair>
        <FieldPair>
          <SelectField
            label={es("asset.type")}
            none={es("asset.choose")}
            options={types.map((one) => ({ value: one.assetType, label: one.title }))}
            error={errors.assetType?.message}
            {...register("assetType", {
              validate: needed,
              // A particular of the same name may mean something else at another type.
              onChange: () => setValue("particulars", {}),
            })}
          />
          <SelectField
            label={es("asset.place")}
            none={es("asset.choose")}
            options={places.map((place) => ({ value: place.id, label: pathOf(places, place) }))}
            error={errors.place?.message}
            {...register("place", { validate: needed })}
          />
        </FieldPair>
        {particularsInOrder(type?.particulars ?? {}).map(([name, definition]) => (
          <ParticularField
            key={name}
            definition={definition}
            error={errors.particulars?.[name]?.message}
            field={register(`particulars.${name}`, {
              validate: (text) => particularFits(definition, text),
            })}
          />
        ))}
        <LineField
          label={es("asset.serial")}
          autoComplete="off"
          error={errors.serial?.message}
          {...register("serial")}
        />
        {refused}
        <Button kind="secondary" type="submit" disabled={formState.isSubmitting}>
          {es("asset.go")}
        </Button>
      </LeafWords>
    </form>
  );
};
