import {
  Button,
  FieldPair,
  LeafWords,
  LineField,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  SelectField,
  StateLine,
} from "@roundbook/runner/form";
import { type AddPerson, ROLES } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { d } from "../messages/desk.ts";
import { es } from "../messages/estate.ts";
import { sendJson } from "./client.ts";
import { useFormRefused } from "./estate-refused.tsx";
import { usePeople } from "./queries.ts";
import { useSession } from "./session.tsx";

const EMPTY: AddPerson = { name: "", role: "inspector", signIn: "", password: "" };

export const People = () => {
  const { data, isPending } = usePeople();
  const people = data ?? [];
  const { person } = useSession();
  const queries = useQueryClient();
  const [added, setAdded] = useState<string>();
  const form = useForm<AddPerson>({ defaultValues: EMPTY });
  const { refused, guard } = useFormRefused(form);
  const { register, formState } = form;
  const { errors } = formState;
  const roles = ROLES.filter((role) => role !== "owner" || person.role === "owner");
  const submit = form.handleSubmit((fields) =>
    guard(async () => {
      await sendJson("POST", "/api/people", { ...fields, name: fields.name.trim() });
      await queries.invalidateQueries({ queryKey: ["people"] });
      setAdded(fields.name.trim());
      form.reset(EMPTY);
    }),
  );
  return (
    <section>
      <PlaceHeading title={es("people.title")} aside={data && String(data.length)} />
      {isPending && <Loading label={es("people.title")} />}
      {added && <StateLine>{es("people.added", { name: added })}</StateLine>}
      <Rows>
        {people.map((one) => (
          <Row key={one.id} name={one.name} second={es(`people.role-${one.role}`)} />
        ))}
      </Rows>
      <form onSubmit={submit} noValidate aria-label={es("people.add")}>
        <LeafWords>
          <h3>{es("people.add")}</h3>
          <LineField
            label={es("people.name")}
            autoComplete="off"
            error={errors.name && (errors.name.message || d("field.needed"))}
            {...register("name", { validate: (name) => name.trim() !== "" })}
          />
          <SelectField
            label={es("people.role")}
            options={roles.map((value) => ({ value, label: es(`people.role-${value}`) }))}
            error={errors.role?.message}
            {...register("role")}
          />
          <FieldPair>
            <LineField
              label={es("people.sign-in")}
              help={es("people.sign-in-help")}
              autoComplete="off"
              autoCapitalize="none"
              error={errors.signIn && (errors.signIn.message || es("people.sign-in-help"))}
              {...register("signIn", { required: true, pattern: /^[a-z0-9][a-z0-9._@+-]{1,99}$/ })}
            />
            <LineField
              label={es("people.password")}
              help={es("people.password-help")}
              type="password"
              autoComplete="new-password"
              error={errors.password && (errors.password.message || es("people.password-help"))}
              {...register("password", { required: true, minLength: 10 })}
            />
          </FieldPair>
          {refused}
          <Button kind="secondary" type="submit" disabled={formState.isSubmitting}>
            {es("people.go")}
          </Button>
        </LeafWords>
      </form>
    </section>
  );
};
