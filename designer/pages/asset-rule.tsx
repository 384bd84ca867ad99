import {
  Button,
  Buttons,
  dateWords,
  durationWords,
  FieldPair,
  LeafWords,
  LineField,
  useMessages,
} from "@roundbook/runner/form";
import {
  hasTrigger,
  type IntervalRow,
  type IntervalRule,
  type OverrideRow,
} from "@roundbook/schemas";
import { useForm } from "react-hook-form";
import { aw } from "../messages/asset.ts";
import { readLength, readMargin } from "../model/interval-length.ts";
import { sendJson } from "./client.ts";
import { useFormRefused } from "./estate-refused.tsx";
import { useIntervalSentence } from "./interval-sentence.ts";

interface Fields {
  every: string;
  before: string;
  after: string;
  reason: string;
  until: string;
}

/** ISO 8601 durations; a margin that is not given is none. */
export interface OwnLengths {
  readonly every: string;
  readonly before?: string | undefined;
  readonly after?: string | undefined;
}

/** The interval's rule with other lengths; of a kind that has none a length from last done. */
export const ruleOfOwn = (
  rule: IntervalRule,
  { every, before, after }: OwnLengths,
): IntervalRule => {
  const late = after === undefined ? {} : { late: after };
  if (rule.kind === "anniversary" && before !== undefined) {
    const { late: _, ...rest } = rule;
    return { ...rest, every, within: before, ...late };
  }
  const early = before === undefined ? {} : { early: before };
  if (rule.kind === "from-last-done") {
    const { early: _, late: __, ...rest } = rule;
    return { ...rest, every, ...early, ...late };
  }
  const { neverAfter, onDayOff, whenClosed } = rule;
  return {
    kind: "from-last-done",
    every,
    ...early,
    ...late,
    ...(neverAfter === undefined ? {} : { neverAfter }),
    ...(onDayOff === undefined ? {} : { onDayOff }),
    ...(whenClosed === undefined ? {} : { whenClosed }),
  };
};

/** The lengths the form has fields for; a kind counted otherwise has none. */
const lengthsOf = (rule: IntervalRule): Partial<OwnLengths> => {
  if (rule.kind === "from-last-done")
    return { every: rule.every, before: rule.early, after: rule.late };
  if (rule.kind === "anniversary")
    return { every: rule.every, before: rule.within, after: rule.late };
  return {};
};

const FIELD_OF: Readonly<Record<string, keyof Fields>> = {
  "/rule/every": "every",
  "/rule/early": "before",
  "/rule/within": "before",
  "/rule/late": "after",
};

/** Other lengths for this asset alone, with their reason; or back to the interval's own. */
export const AssetRule = ({
  asset,
  interval,
  override,
  onDone,
}: {
  readonly asset: string;
  readonly interval: IntervalRow;
  readonly override: OverrideRow | undefined;
  onDone(): Promise<void>;
}) => {
  const { t } = useMessages();
  const sentence = useIntervalSentence();
  const { definition } = interval;
  // Margins stand as they are in force, so that a shorter length can be given shorter ones.
  const standing = lengthsOf(override?.rule ?? definition.rule);
  const words = (iso: string | undefined) => (iso === undefined ? "" : durationWords(t, iso));
  const form = useForm<Fields>({
    defaultValues: {
      every: override ? words(standing.every) : "",
      before: words(standing.before),
      after: words(standing.after),
      reason: "",
      until: override?.until ?? "",
    },
  });
  const { refused, guard, busy } = useFormRefused(form, FIELD_OF);
  const { register, formState, handleSubmit } = form;
  const { errors } = formState;
  const path = `/api/assets/${asset}/overrides/${interval.id}`;
  const needed = (value: string) => value.trim() !== "" || aw("asset.needed");
  const margin = (text: string) => readMargin(text) !== null || aw("asset.not-a-margin");
  const kept = definition.rule.kind === "anniversary";
  const submit = handleSubmit(({ every, before, after, reason, until }) =>
    guard(async () => {
      const length = readLength(every);
      if (length === undefined) return;
      const lengths = {
        every: length,
        before: readMargin(before) ?? undefined,
        after: readMargin(after) ?? undefined,
      };
      await sendJson("PUT", path, {
        rule: ruleOfOwn(definition.rule, lengths),
        reason: reason.trim(),
        ...(until === "" ? {} : { until }),
      });
      await onDone();
    }),
  );
  /** Ending asks for a reason alone, whatever stands in the other fields. */
  const end = async () => {
    if (!(await form.trigger("reason", { shouldFocus: true }))) return;
    await guard(async () => {
      await sendJson("DELETE", path, { reason: form.getValues("reason").trim() });
      await onDone();
    });
  };
  // What more than time asks for is asked for still: the core sees to it, and this says so.
  const adds = hasTrigger(definition.rule);
  return (
    <form onSubmit={submit} noValidate>
      <LeafWords>
        <h3>{aw("asset.own-of", { title: definition.title })}</h3>
        {override && (
          <p>
            {aw(override.until === null ? "asset.own-stands" : "asset.own-stands-until", {
              rule: sentence({ ...definition, rule: override.rule }),
              reason: override.reason,
              until: override.until === null ? "" : dateWords(override.until),
            })}
          </p>
        )}
        <FieldPair>
          <LineField
            label={aw("asset.own-every")}
            help={aw("asset.own-every-help")}
            autoComplete="off"
            error={errors.every?.message}
            {...register("every", {
              validate: (text) => readLength(text) !== undefined || aw("asset.not-a-length"),
            })}
          />
          <LineField
            label={aw("asset.own-until")}
            type="date"
            error={errors.until?.message}
            {...register("until")}
          />
        </FieldPair>
        <FieldPair>
          <LineField
            label={aw("asset.own-before")}
            help={aw(kept ? "asset.own-every-help" : "asset.own-margin-help")}
            autoComplete="off"
            error={errors.before?.message}
            {...register("before", {
              validate: (text) =>
                kept && !readMargin(text) ? aw("asset.not-a-length") : margin(text),
            })}
          />
          <LineField
            label={aw("asset.own-after")}
            help={aw("asset.own-margin-help")}
            autoComplete="off"
            error={errors.after?.message}
            {...register("after", { validate: margin })}
          />
        </FieldPair>
        <LineField
          label={aw("asset.own-reason")}
          autoComplete="off"
          error={errors.reason?.message}
          {...register("reason", { validate: needed })}
        />
        {adds && <p className="second">{aw("asset.own-adds")}</p>}
        {refused}
        <Buttons>
          {override && (
            <Button kind="secondary" disabled={busy} onClick={() => void end()}>
              {aw("asset.own-end-go")}
            </Button>
          )}
          <Button kind="secondary" type="submit" disabled={busy}>
            {aw(override ? "asset.own-replace-go" : "asset.own-go")}
          </Button>
        </Buttons>
      </LeafWords>
    </form>
  );
};
