import {
  Button,
  Buttons,
  FieldPair,
  LeafWords,
  LineField,
  Loading,
  PlaceHeading,
  SelectField,
  StateLine,
  TitleBlock,
  WordButton,
  WordLink,
} from "@roundbook/runner/form";
import type { AssetTypeRow, ChecklistRow, IntervalRow } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { useLocation, useParams } from "wouter";
import { d } from "../messages/desk.ts";
import {
  definitionOf,
  EMPTY_INTERVAL,
  type IntervalFields,
  isEvery,
  isMargin,
  ruleOf,
  toIntervalFields,
} from "../model/interval-fields.ts";
import { sendJson } from "./client.ts";
import { DeskPage, NarrowOnly } from "./desk-page.tsx";
import { useIntervalSentence } from "./interval-sentence.ts";
import { NextDates } from "./next-dates.tsx";
import { useAssetTypes, useChecklists, useIntervals } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

export const IntervalPage = () => {
  const { id = "new" } = useParams<{ id: string }>();
  const intervals = useIntervals();
  const types = useAssetTypes();
  const checklists = useChecklists();
  // Held above the form, which begins anew under the address a new interval gets.
  const [saved, setSaved] = useState(false);
  if (!intervals.data || !types.data || !checklists.data) {
    return (
      <DeskPage current="intervals">
        <Loading label={d("app.opening")} />
      </DeskPage>
    );
  }
  const row = intervals.data.find((one) => one.id === id);
  return (
    <IntervalForm
      key={id}
      {...{ row, types: types.data, checklists: checklists.data, saved, setSaved }}
    />
  );
};

const scoresOf = (checklists: readonly ChecklistRow[], id: string) =>
  Object.entries(checklists.find((one) => one.id === id)?.document.scores ?? {}).filter(
    ([, score]) => score.bands.some((band) => band.next !== undefined),
  );

const IntervalForm = ({
  row,
  types,
  checklists,
  saved,
  setSaved,
}: {
  readonly row: IntervalRow | undefined;
  readonly types: readonly AssetTypeRow[];
  readonly checklists: readonly ChecklistRow[];
  readonly saved: boolean;
  setSaved(saved: boolean): void;
}) => {
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  const [ending, setEnding] = useState(false);
  const [turned, setTurned] = useState(false);
  const form = useForm<IntervalFields>({
    defaultValues: row ? toIntervalFields(row.definition) : EMPTY_INTERVAL,
  });
  const sentence = useIntervalSentence();
  const { register, watch, formState } = form;
  const fields = watch();
  const rule = ruleOf(fields);
  const scores = scoresOf(checklists, fields.checklist);
  const bands = scores.find(([name]) => name === fields.score)?.[1].bands ?? [];
  const needed = (value: string) => value.trim() !== "" || d("field.needed");
  const margin = (value: string) => isMargin(value) || d("intervals.margin-wrong");
  const submit = form.handleSubmit((values) =>
    guard(async () => {
      const definition = definitionOf(values);
      if (!definition) return;
      const reply = await sendJson<{ id: string } | undefined>(
        row ? "PUT" : "POST",
        row ? `/api/intervals/${row.id}` : "/api/intervals",
        definition,
      );
      await queries.invalidateQueries({ queryKey: ["intervals"] });
      setSaved(true);
      if (reply && !row) navigate(`/intervals/${reply.id}`, { replace: true });
    }),
  );
  const end = () =>
    guard(async () => {
      if (!row) return;
      if (!ending) return setEnding(true);
      await sendJson("DELETE", `/api/intervals/${row.id}`);
      await queries.invalidateQueries({ queryKey: ["intervals"] });
      navigate("/intervals");
    });
  return (
    <DeskPage
      current="intervals"
      facing={<NextDates rule={rule} bands={bands} />}
      turned={turned}
      onTurn={() => setTurned(false)}
      dock={
        <Buttons>
          {row && (
            <Button kind="secondary" onClick={() => void end()}>
              {d(ending ? "intervals.end-sure" : "intervals.end")}
            </Button>
          )}
          <Button kind="primary" disabled={formState.isSubmitting} onClick={() => void submit()}>
            {d("intervals.save")}
          </Button>
        </Buttons>
      }
    >
      <TitleBlock
        title={fields.title || d("intervals.new")}
        second={
          row
            ? sentence({ ...row.definition, rule: rule ?? row.definition.rule })
            : d("intervals.not-yet")
        }
        actionsAbove
        actions={
          <>
            <NarrowOnly>
              <WordButton onClick={() => setTurned(true)}>{d("intervals.dates")}</WordButton>
            </NarrowOnly>
            <WordLink href="/designer/intervals" onFollow={() => navigate("/intervals")}>
              {d("intervals.title")}
            </WordLink>
          </>
        }
      />
      {saved && <StateLine>{d("intervals.saved")}</StateLine>}
      <form onSubmit={submit} noValidate>
        <LeafWords>
          {refused}
          <LineField
            label={d("intervals.name")}
            autoComplete="off"
            error={formState.errors.title?.message}
            {...register("title", { validate: needed })}
          />
          <SelectField
            label={d("intervals.type")}
            none={d("field.choose")}
            options={types.map((one) => ({ value: one.assetType, label: one.title }))}
            error={formState.errors.assetType?.message}
            {...register("assetType", { validate: needed })}
          />
          <SelectField
            label={d("intervals.checklist")}
            none={d("field.choose")}
            options={checklists
              .filter((one) => one.status === "issued")
              .map((one) => ({ value: one.id, label: one.document.title }))}
            error={formState.errors.checklist?.message}
            {...register("checklist", { validate: needed })}
          />
        </LeafWords>
        <PlaceHeading title={d("intervals.how")} />
        <LeafWords>
          <SelectField
            label={d("intervals.again")}
            options={[
              ...(["from-last-done", "by-result"] as const).map((value) => ({
                value: value as string,
                label: d(`intervals.${value}`),
              })),
              ...(fields.kept
                ? [{ value: "kept", label: sentence({ ...fields, rule: fields.kept }) }]
                : []),
            ]}
            {...register("kind", {
              onChange: () => {
                const [only, other] = scores;
                if (only && !other) form.setValue("score", only[0]);
              },
            })}
          />
          {fields.kind === "kept" ? null : fields.kind === "from-last-done" ? (
            <FieldPair>
              <LineField
                label={d("intervals.every")}
                inputMode="numeric"
                error={formState.errors.every?.message}
                {...register("every", {
                  validate: (every) => isEvery(every) || d("intervals.every-wrong"),
                })}
              />
              <SelectField
                label={d("intervals.unit")}
                options={[
                  { value: "D", label: d("intervals.days") },
                  { value: "W", label: d("intervals.weeks") },
                  { value: "M", label: d("intervals.months") },
                  { value: "Y", label: d("intervals.years") },
                ]}
                {...register("unit")}
              />
            </FieldPair>
          ) : scores.length === 0 ? (
            <p>{d("intervals.no-score")}</p>
          ) : (
            <SelectField
              label={d("intervals.score")}
              none={d("field.choose")}
              options={scores.map(([name, score]) => ({ value: name, label: score.title }))}
              error={formState.errors.score?.message}
              {...register("score", { validate: needed })}
            />
          )}
          {fields.kind !== "kept" && (
            <FieldPair>
              <LineField
                label={d("intervals.early")}
                error={formState.errors.early?.message}
                {...register("early", { validate: margin })}
              />
              <LineField
                label={d("intervals.late")}
                error={formState.errors.late?.message}
                {...register("late", { validate: margin })}
              />
            </FieldPair>
          )}
          <LineField
            label={d("intervals.basis")}
            help={d("intervals.basis-help")}
            {...register("basis")}
          />
          <p className="second caution">{d("intervals.caution")}</p>
        </LeafWords>
      </form>
    </DeskPage>
  );
};
