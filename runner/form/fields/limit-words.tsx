import type { LimitJudgement, PointJudgement, QuantityDefinition } from "@roundbook/schemas";
import { printNumber, printQuantity, printWorking, unbroken } from "../look/print-unit.ts";
import { Equation } from "../look/reading-box.tsx";
import { dateWords } from "../messages/dates.ts";
import { useMessages } from "../messages/messages.tsx";
import { useTitled } from "../messages/titled.tsx";
import { boundDecimals, decidingLimit } from "../model/limit-drawing.ts";

export interface LimitWordsProps {
  readonly quantity: QuantityDefinition | undefined;
  readonly judgement: PointJudgement;
  readonly limits: readonly LimitJudgement[];
  /** Every limit in words: before there is an answer, and where no drawing shows the others. */
  readonly all?: boolean;
  /** Only what is asked for: nothing is said of what came out. */
  readonly silent?: boolean;
}

/** Reasons that need no sentence under a limit that is there to be met. */
const PLAIN = new Set(["not-answered", "no-limits", "result-awaited"]);

/** A bound that is a figure already: saying it twice explains nothing. */
const FIGURE = /^[−-]?[\d.]+$/;

/** "max 0.233 Ω = 0.1 + 10 × 0.0133", then how far off, then the basis. */
export function LimitWords({ quantity, judgement, limits, all, silent }: LimitWordsProps) {
  const { t } = useMessages();
  const titled = useTitled();
  const limit = decidingLimit(limits, judgement);
  const shown = (all ? limits : limits.filter((one) => one === limit)).filter(
    (one) => !all || one.kind !== "max" || otherSide(one, limits) === undefined,
  );
  const why =
    silent || PLAIN.has(judgement.why.code)
      ? undefined
      : judgement.why.params.by === 0
        ? t("limit.on")
        : titled(judgement.why);
  return (
    <>
      {shown.map((one) => {
        const said = rangeWords(t, one, limits, quantity) ?? boundWords(t, one, quantity);
        return (
          said !== undefined && (
            <Equation key={`${one.index} ${one.kind}`}>
              {one.working === undefined || FIGURE.test(one.working)
                ? said
                : t("limit.equation", { limit: said, working: printWorking(one.working) })}
              {guardWords(t, one, quantity)}
              {shown.length > 1 && one.severity === "advisory" && t("limit.is-advisory")}
            </Equation>
          )
        );
      })}
      {(why !== undefined || limit?.basis !== undefined) && (
        <p className="second">
          {why !== undefined && <span className={toneOf(judgement)}>{why}</span>}{" "}
          {limit?.basis && unbroken(limit.basis)}
        </p>
      )}
    </>
  );
}

/** ", accepted to 0.21 Ω": where a decision rule moves the bound by its guard band. */
function guardWords(
  t: ReturnType<typeof useMessages>["t"],
  { bound, acceptance }: LimitJudgement,
  quantity: QuantityDefinition | undefined,
): string | undefined {
  if (acceptance === undefined || acceptance === bound) return undefined;
  const decimals = boundDecimals(acceptance, quantity?.decimals);
  return t("limit.acceptance", {
    acceptance: printQuantity(acceptance, quantity?.unit ?? "1", { decimals }),
  });
}

/** The other end of a range of plain figures: what is worked out or guarded is said by itself. */
function otherSide(
  limit: LimitJudgement,
  limits: readonly LimitJudgement[],
): LimitJudgement | undefined {
  const plain = ({ bound, working, acceptance }: LimitJudgement) =>
    bound !== null && acceptance === undefined && (working === undefined || FIGURE.test(working));
  if ((limit.kind !== "min" && limit.kind !== "max") || !plain(limit)) return undefined;
  const kind = limit.kind === "min" ? "max" : "min";
  return limits.find((one) => one.index === limit.index && one.kind === kind && plain(one));
}

/** "2.0 to 4.0 mm"; nothing for a limit with one side. */
function rangeWords(
  t: ReturnType<typeof useMessages>["t"],
  limit: LimitJudgement,
  limits: readonly LimitJudgement[],
  quantity: QuantityDefinition | undefined,
): string | undefined {
  const ends = [limit.bound, otherSide(limit, limits)?.bound].flatMap((end) => end ?? []);
  if (ends.length < 2) return undefined;
  const decimals = Math.max(...ends.map((end) => boundDecimals(end, quantity?.decimals)));
  return t("limit.range", {
    min: printNumber(Math.min(...ends), { decimals }),
    max: printQuantity(Math.max(...ends), quantity?.unit ?? "1", { decimals }),
  });
}

/** "max 0.233 Ω"; nothing for a list of accepted answers. */
export function boundWords(
  t: ReturnType<typeof useMessages>["t"],
  { kind, bound, boundDate }: LimitJudgement,
  quantity: QuantityDefinition | undefined,
): string | undefined {
  if (boundDate !== undefined && (kind === "notBefore" || kind === "notAfter"))
    return t(`limit.${kind}`, { bound: dateWords(boundDate) });
  if (kind === "accept" || kind === "notBefore" || kind === "notAfter" || bound === null)
    return undefined;
  const decimals = boundDecimals(bound, quantity?.decimals);
  return t(`limit.${kind}`, { bound: printQuantity(bound, quantity?.unit ?? "1", { decimals }) });
}

const toneOf = ({ verdict }: PointJudgement): string | undefined => {
  if (verdict === "fail") return "danger";
  return verdict === "pass" ? "within" : undefined;
};
