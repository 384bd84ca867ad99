import { Button, LeafWords, LineField, PlaceHeading } from "@roundbook/runner/form";
import {
  type AssetRow,
  type AssetTypeRow,
  type Particulars,
  particularsInOrder,
} from "@roundbook/schemas";
import { useForm } from "react-hook-form";
import { aw } from "../messages/asset.ts";
import { sendJson } from "./client.ts";
import { ParticularField, particularFits, particularOf } from "./estate-particular.tsx";
import { useFormRefused } from "./estate-refused.tsx";

interface Fields {
  particulars: Record<string, string>;
  reason: string;
  modified: boolean;
}

/** What is known of an asset, said anew with a reason. */
export const AssetParticulars = ({
  asset,
  type,
  onDone,
}: {
  readonly asset: AssetRow;
  readonly type: AssetTypeRow;
  onDone(): Promise<void>;
}) => {
  const form = useForm<Fields>({
    defaultValues: {
      particulars: Object.fromEntries(
        Object.entries(asset.particulars).map(([name, value]) => [name, String(value)]),
      ),
      reason: "",
      modified: false,
    },
  });
  const { refused, guard } = useFormRefused(form);
  const { register, formState } = form;
  const definitions = type.particulars;
  const submit = form.handleSubmit(({ particulars, reason, modified }) =>
    guard(async () => {
      const said: Particulars = Object.fromEntries(
        Object.entries(definitions).flatMap(([name, definition]) => {
          const value = particularOf(definition, particulars[name]);
          return value === undefined ? [] : [[name, value] as const];
        }),
      );
      const body = { particulars: said, reason: reason.trim(), ...(modified ? { modified } : {}) };
      await sendJson("PUT", `/api/assets/${asset.id}/particulars`, body);
      await onDone();
    }),
  );
  return (
    <section>
      <PlaceHeading title={aw("asset.particulars")} />
      <form onSubmit={submit} noValidate>
        <LeafWords>
          {Object.keys(definitions).length === 0 && <p>{aw("asset.particulars-none")}</p>}
          {particularsInOrder(definitions).map(([name, definition]) => (
            <ParticularField
              key={name}
              definition={definition}
              error={formState.errors.particulars?.[name]?.message}
              field={register(`particulars.${name}`, {
                validate: (typed) => particularFits(definition, typed),
              })}
            />
          ))}
          <LineField
            label={aw("asset.particulars-reason")}
            autoComplete="off"
            error={formState.errors.reason?.message}
            {...register("reason", {
              validate: (value) => value.trim() !== "" || aw("asset.needed"),
            })}
          />
          <label className="desk-tick">
            <input type="checkbox" {...register("modified")} />
            {aw("asset.modified")}
          </label>
          {refused}
          <Button kind="secondary" type="submit" disabled={formState.isSubmitting}>
            {aw("asset.particulars-go")}
          </Button>
        </LeafWords>
      </form>
    </section>
  );
};
