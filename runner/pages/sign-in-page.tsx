import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { useLocation } from "wouter";
import { Button, Buttons, LeafWords, LineField, Page, TitleBlock } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { work } from "../messages/work.ts";
import type { DeviceDatabase } from "../offline/database.ts";
import { Refusal, sendJson, Unreachable } from "../sync/client.ts";

/** Where to go on after signing in: a path of this origin, nothing else. */
export const nextPath = (search: string): string => {
  const next = new URLSearchParams(search).get("next") ?? "/";
  return /^\/(?![/\\])[\w\-./:?=&%]*$/.test(next) ? next : "/";
};

const whatWentWrong = (error: unknown): string => {
  if (error instanceof Unreachable) return work("sign.away");
  if (!(error instanceof Refusal)) throw error;
  if (error.status === 401) return work("sign.wrong");
  if (error.status === 429) return work("sign.many");
  if (error.status === 422) return work("sign.wrong");
  return work("sign.failed", { code: error.code });
};

export const SignInPage = ({
  database,
  estate,
  onSignedIn,
}: {
  readonly database: DeviceDatabase;
  readonly estate: string | null;
  readonly onSignedIn: () => void;
}) => {
  const [, navigate] = useLocation();
  const [wrong, setWrong] = useState<string>();
  const form = useForm({ defaultValues: { signIn: "", password: "" } });
  const outbox = useQuery({ queryKey: ["outbox"], queryFn: () => database.getAll("outbox") });
  const waiting = outbox.data?.length ?? 0;
  const submit = form.handleSubmit(async (fields) => {
    setWrong(undefined);
    try {
      await sendJson("POST", "/api/session", {
        ...fields,
        signIn: fields.signIn.trim().toLowerCase(),
      });
    } catch (error) {
      setWrong(whatWentWrong(error));
      return;
    }
    const next = nextPath(location.search);
    // The designer is an app of its own: its pages are loaded, not routed to.
    if (next.startsWith("/designer")) location.assign(next);
    else {
      navigate(next, { replace: true });
      onSignedIn();
    }
  });
  return (
    <Page>
      <form onSubmit={submit} noValidate>
        <TitleBlock title={work("sign.title")} second={estate ?? w("app.name")} />
        <LeafWords>
          <LineField
            label={work("begin.sign-in")}
            autoComplete="username"
            autoCapitalize="none"
            error={form.formState.errors.signIn && work("field.needed")}
            {...form.register("signIn", { required: true })}
          />
          <LineField
            label={work("begin.password")}
            type="password"
            autoComplete="current-password"
            error={wrong ?? (form.formState.errors.password && work("field.needed"))}
            {...form.register("password", { required: true })}
          />
          {waiting > 0 && <p className="second">{w("state.waiting", { count: waiting })}</p>}
        </LeafWords>
        <Buttons>
          <Button kind="primary" type="submit" disabled={form.formState.isSubmitting}>
            {work("sign.go")}
          </Button>
        </Buttons>
      </form>
    </Page>
  );
};
