import {
  Button,
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
import { readLength } from "../model/interval-length.ts";
import { sendJson } from "./client.ts";
import { useFormRefused } from "./estate-refused.tsx";

interface Fields {
  every: string;
  reason: string;
  until: string;
}

/** The interval's rule with another length; of a kind that has none a length from last done. */
export const ruleOfOwn = (rule: IntervalRule, every: string): IntervalRule => {
  if (rule.kind === "from-last-done") return { ...rule, every };
  if (rule.kind === "anniversary") return { ...rule, every };
  const { neverAfter, onDayOff, whenClosed } = rule;
  return {
    kind: "from-last-done",
    every,
    ...(neverAfter === undefined ? {} : { neverAfter }),
    ...(onDayOff === undefined ? {} : { onDayOff }),
    ...(whenClosed === undefined ? {} : { whenClosed }),
  };
};

/** Another length for this asset alone, with its reason; or back to the interval's own. */
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
  const form = useForm<Fields>({ defaultValues: { every: "", reason: "", until: "" } });
  const { refused, guard } = useFormRefused(form);
  const { register, formState, handleSubmit } = form;
  const path = `/api/assets/${asset}/overrides/${interval.id}`;
  const needed = (value: string) => value.trim() !== "" || aw("asset.needed");
  const submit = handleSubmit(({ every, reason, until }) =>
    guard(async () => {
      const length = readLength(every);
      if (length === undefined) return;
      await sendJson("PUT", path, {
        rule: ruleOfOwn(interval.definition.rule, length),
        reason: reason.trim(),
        ...(until === "" ? {} : { until }),
      });
      await onDone();
    }),
  );
  const end = handleSubmit(({ reason }) =>
    guard(async () => {
      await sendJson("DELETE", path, { reason: reason.trim() });
      await onDone();
    }),
  );
  // What more than time asks for is asked for still: the core sees to it, and this says so.
  const adds = hasTrigger(interval.definition.rule);
  const every =
    override && "every" in override.rule && typeof override.rule.every === "string"
      ? durationWords(t, override.rule.every)
      : "";
  return (
    <form onSubmit={override ? end : submit} noValidate>
      <LeafWords>
        <h3>{aw("asset.own-of", { title: interval.definition.title })}</h3>
        {override && (
          <p>
            {override.until === null
              ? aw("asset.own-stands", { every, reason: override.reason })
              : aw("asset.own-stands-until", {
                  every,
                  reason: override.reason,
                  until: dateWords(override.until),
                })}
          </p>
        )}
        {!override && (
          <FieldPair>
            <LineField
              label={aw("asset.own-every")}
              help={aw("asset.own-every-help")}
              autoComplete="off"
              error={formState.errors.every?.message}
              {...register("every", {
                validate: (text) => readLength(text) !== undefined || aw("asset.not-a-length"),
              })}
            />
            <LineField
              label={aw("asset.own-until")}
              type="date"
              error={formState.errors.until?.message}
              {...register("until")}
            />
          </FieldPair>
        )}
        <LineField
          label={aw("asset.own-reason")}
          autoComplete="off"
          error={formState.errors.reason?.message}
          {...register("reason", { validate: needed })}
        />
        {adds && !override && <p className="second">{aw("asset.own-adds")}</p>}
        {refused}
        <Button kind="secondary" type="submit" disabled={formState.isSubmitting}>
          {aw(override ? "asset.own-end-go" : "asset.own-go")}
        </Button>
      </LeafWords>
    </form>
  );
};
