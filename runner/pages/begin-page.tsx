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
import { work } from "../messages/work.ts";
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
        <TitleBlock title={work("begin.title")} second={work("begin.about")} size="cover" />
        <Empty sentence={work("begin.no-token")} />
      </Page>
    );
  }
  if (mode) return <FirstOwner {...{ mode, token, onBegun }} onBack={() => setMode(undefined)} />;
  return (
    <Page>
      <TitleBlock title={work("begin.title")} second={work("begin.about")} size="cover" />
      {(["own", "demo"] as const).map((one, at) => (
        <section key={one} className="begin-way">
          <PlaceHeading number={String(at + 1)} title={work(`begin.${one}`)} />
          <LeafWords>
            <p className="second">{work(`begin.${one}-about`)}</p>
            <Button kind={at === 0 ? "primary" : "secondary"} onClick={() => setMode(one)}>
              {work(`begin.${one}-go`)}
            </Button>
          </LeafWords>
        </section>
      ))}
      <LeafWords>
        <p className="second">{work("begin.caution")}</p>
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
      if (error instanceof Unreachable) setWrong(work("sign.away"));
      else if (error instanceof Refusal) setWrong(work("sign.failed", { code: error.code }));
      else throw error;
      return;
    }
    navigate("/", { replace: true });
    onBegun();
  });
  return (
    <Page>
      <TitleBlock
        title={work(`begin.${mode}`)}
        actions={<WordButton onClick={onBack}>{work("begin.back")}</WordButton>}
      />
      <form onSubmit={submit} noValidate>
        <LeafWords>
          {mode === "own" && (
            <>
              <LineField
                label={work("begin.estate")}
                error={errors.estate && work("field.needed")}
                {...form.register("estate", { required: true, maxLength: 200 })}
              />
              <LineField
                label={work("begin.zone")}
                error={errors.zone && work("field.needed")}
                {...form.register("zone", { required: true })}
              />
            </>
          )}
          <LineField
            label={work("begin.name")}
            autoComplete="name"
            error={errors.name && work("field.needed")}
            {...form.register("name", { required: true, maxLength: 200 })}
          />
          <LineField
            label={work("begin.sign-in")}
            help={work("begin.sign-in-help")}
            autoComplete="username"
            autoCapitalize="none"
            error={errors.signIn && work("field.sign-in")}
            {...form.register("signIn", {
              pattern: /^[a-z0-9][a-z0-9._@+-]{1,99}$/,
              required: true,
            })}
          />
          <LineField
            label={work("begin.password")}
            help={work("begin.password-help")}
            type="password"
            autoComplete="new-password"
            error={wrong ?? (errors.password && work("field.password"))}
            {...form.register("password", { required: true, minLength: 10, maxLength: 200 })}
          />
          {isSubmitting && <p role="status">{work("begin.working")}</p>}
        </LeafWords>
        <Buttons>
          <Button kind="primary" type="submit" disabled={isSubmitting}>
            {work(`begin.${mode}-go`)}
          </Button>
        </Buttons>
      </form>
    </Page>
  );
};
