import {
  Button,
  Empty,
  FieldPair,
  LeafWords,
  LineField,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  SelectField,
  WordButton,
} from "@roundbook/runner/form";
import type { AddPlace, PlaceRow } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useEffect } from "react";
import { useForm } from "react-hook-form";
import { d } from "../messages/desk.ts";
import { es } from "../messages/estate.ts";
import { sendJson } from "./client.ts";
import { useFormRefused } from "./estate-refused.tsx";
import { usePlaces } from "./queries.ts";

const LEVELS = ["site", "building", "floor", "room"] as const;

/** Names from the site down, for a line that has no place of its own in the list. */
export const pathOf = (places: readonly PlaceRow[], place: PlaceRow): string => {
  const parent = places.find((one) => one.id === place.parent);
  return parent ? `${pathOf(places, parent)} › ${place.name}` : place.name;
};

/** Each place before those within it, sisters as the round walks them. */
export const inWalkingOrder = (places: readonly PlaceRow[], parent: string | null): PlaceRow[] =>
  places
    .filter((one) => one.parent === parent)
    .sort((a, b) => a.order - b.order)
    .flatMap((one) => [one, ...inWalkingOrder(places, one.id)]);

export const Places = () => {
  const { data, isError, refetch } = usePlaces();
  if (!data)
    return (
      <section>
        <PlaceHeading title={es("place.title")} />
        {isError ? (
          <Empty
            sentence={d("app.away")}
            actions={<WordButton onClick={() => void refetch()}>{d("app.again")}</WordButton>}
          />
        ) : (
          <Loading label={es("place.title")} />
        )}
      </section>
    );
  const places = data;
  const sorted = inWalkingOrder(places, null);
  return (
    <section>
      <PlaceHeading title={es("place.title")} aside={String(places.length)} />
      {places.length === 0 && (
        <Empty sentence={es("place.none")}>
          <p>{es("place.none-next")}</p>
        </Empty>
      )}
      <Rows>
        {sorted.map((place) => (
          <Row
            key={place.id}
            number={place.code}
            name={place.name}
            second={place.parent === null ? place.zone : pathOf(places, place)}
            due={es(`place.level-${place.level}`)}
          />
        ))}
      </Rows>
      <AddPlaceForm places={sorted} />
    </section>
  );
};

const AddPlaceForm = ({ places }: { readonly places: readonly PlaceRow[] }) => {
  const queries = useQueryClient();
  const form = useForm({
    defaultValues: {
      level: "room" as AddPlace["level"],
      parent: "",
      code: "",
      name: "",
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    },
  });
  const { refused, guard } = useFormRefused(form);
  const { register, formState, watch } = form;
  const level: AddPlace["level"] = places.length === 0 ? "site" : watch("level");
  const needed = (value: string) => value.trim() !== "" || d("field.needed");
  // A room lies in a floor, a building or a site, never in another room.
  const above = places.filter((one) => LEVELS.indexOf(one.level) < LEVELS.indexOf(level));
  const [only] = above.length === 1 ? above : [];
  useEffect(() => {
    if (only) form.setValue("parent", only.id);
  }, [only, form]);
  const submit = form.handleSubmit((fields) =>
    guard(async () => {
      const body: AddPlace = {
        level,
        parent: level === "site" ? null : fields.parent,
        code: fields.code.trim(),
        name: fields.name.trim(),
        ...(level === "site" ? { zone: fields.zone.trim() } : {}),
      };
      await sendJson("POST", "/api/places", body);
      await queries.invalidateQueries({ queryKey: ["places"] });
      form.reset({ ...fields, code: "", name: "" });
    }),
  );
  return (
    <form onSubmit={submit} noValidate aria-label={es("place.add")}>
      <LeafWords>
        <h3>{es("place.add")}</h3>
        <FieldPair>
          <LineField
            label={es("place.name")}
            autoComplete="off"
            error={formState.errors.name?.message}
            {...register("name", { validate: needed })}
          />
          <LineField
            label={es("place.code")}
            autoComplete="off"
            error={formState.errors.code?.message}
            {...register("code", { validate: needed })}
          />
        </FieldPair>
        <FieldPair>
          {places.length > 0 && (
            <SelectField
              label={es("place.level")}
              options={LEVELS.map((value) => ({ value, label: es(`place.level-${value}`) }))}
              error={formState.errors.level?.message}
              {...register("level")}
            />
          )}
          {level === "site" ? (
            <LineField
              label={es("place.zone")}
              error={formState.errors.zone?.message}
              {...register("zone", { validate: needed })}
            />
          ) : (
            <SelectField
              label={es("place.parent")}
              none={es("asset.choose")}
              options={above.map((place) => ({ value: place.id, label: pathOf(places, place) }))}
              error={formState.errors.parent?.message}
              {...register("parent", { validate: needed })}
            />
          )}
        </FieldPair>
        {refused}
        <Button kind="secondary" type="submit" disabled={formState.isSubmitting}>
          {es("place.go")}
        </Button>
      </LeafWords>
    </form>
  );
};
