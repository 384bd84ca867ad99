import type { Setup } from "@roundbook/schemas";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { useLocation } from "wouter";
import {
  Button,
  Buttons,
  Empty,
  LeafWords,
  LineField,
  Page,
  PlaceHeading,
  TitleBlock,
  WordButton,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { Refusal, sendJson, Unreachable } from "../sync/client.ts";

type Mode = Setup["mode"];

const tokenOf = (search: string): string | null => new URLSearchParams(search).get("begin");

/** The first page of an empty book: begin one's own, or open the invented one. */
export const BeginPage = ({ onBegun }: { readonly onBegun: () => void }) => {
  const [mode, setMode] = useState<Mode>();
  const token = tokenOf(location.search);
  if (token === null) {
    return (
      <Page>
        <TitleBlock title={w("begin.title")} second={w("begin.about")} size="cover" />
        <Empty sentence={w("begin.no-token")} />
      </Page>
    );
  }
  if (mode) return <FirstOwner {...{ mode, token, onBegun }} onBack={() => setMode(undefined)} />;
  return (
    <Page>
      <TitleBlock title={w("begin.title")} second={w("begin.about")} size="cover" />
      {(["own", "demo"] as const).map((one, at) => (
        <section key={one} className="begin-way">
          <PlaceHeading number={String(at + 1)} title={w(`begin.${one}`)} />
          <LeafWords>
            <p className="second">{w(`begin.${one}-about`)}</p>
            <Button kind={at === 0 ? "primary" : "secondary"} onClick={() => setMode(one)}>
              {w(`begin.${one}-go`)}
            </Button>
          </LeafWords>
        </section>
      ))}
      <LeafWords>
        <p className="second">{w("begin.caution")}</p>
      </LeafWords>
    </Page>
  );
};

const FirstOwner = ({
  mode,
  token,
  onBack,
  onBegun,
}: {
  readonly mode: Mode;
  readonly token: string;
  readonly onBack: () => void;
  readonly onBegun: () => void;
}) => {
  const [, navigate] = useLocation();
  const [wrong, setWrong] = useState<string>();
  const form = useForm({
    defaultValues: {
      estate: "",
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      name: "",
      signIn: "",
      password: "",
    },
  });
  const { errors, isSubmitting } = form.formState;
  const submit = form.handleSubmit(async ({ estate, zone, ...owner }) => {
    setWrong(undefined);
    const setup: Setup = { token, mode, ...owner, ...(mode === "own" ? { estate, zone } : {}) };
    try {
      await sendJson("POST", "/api/setup", setup);
    } catch (error) {
      if (error instanceof Unreachable) setWrong(w("sign.away"));
      else if (error instanceof Refusal) setWrong(w("sign.failed", { code: error.code }));
      else throw error;
      return;
    }
    navigate("/", { replace: true });
    onBegun();
  });
  return (
    <Page>
      <TitleBlock
        title={w(`begin.${mode}`)}
        actions={<WordButton onClick={onBack}>{w("begin.back")}</WordButton>}
      />
      <form onSubmit={submit} noValidate>
        <LeafWords>
          {mode === "own" && (
            <>
              <LineField
                label={w("begin.estate")}
                error={errors.estate && w("field.needed")}
                {...form.register("estate", { required: true, maxLength: 200 })}
              />
              <LineField
                label={w("begin.zone")}
                error={errors.zone && w("field.needed")}
                {...form.register("zone", { required: true })}
              />
            </>
          )}
          <LineField
            label={w("begin.name")}
            autoComplete="name"
            error={errors.name && w("field.needed")}
            {...form.register("name", { required: true, maxLength: 200 })}
          />
          <LineField
            label={w("begin.sign-in")}
            help={w("begin.sign-in-help")}
            autoComplete="username"
            autoCapitalize="none"
            error={errors.signIn && w("field.sign-in")}
            {...form.register("signIn", {
              pattern: /^[a-z0-9][a-z0-9._@+-]{1,99}$/,
              required: true,
            })}
          />
          <LineField
            label={w("begin.password")}
            help={w("begin.password-help")}
            type="password"
            autoComplete="new-password"
            error={wrong ?? (errors.password && w("field.password"))}
            {...form.register("password", { required: true, minLength: 10, maxLength: 200 })}
          />
          {isSubmitting && <p role="status">{w("begin.working")}</p>}
        </LeafWords>
        <Buttons>
          <Button type="submit" disabled={isSubmitting}>
            {w(`begin.${mode}-go`)}
          </Button>
        </Buttons>
      </form>
    </Page>
  );
};
