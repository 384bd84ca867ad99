import type { LimitJudgement, PointJudgement, QuantityDefinition } from "@roundbook/schemas";
import { printQuantity, printWorking, unbroken } from "../look/print-unit.ts";
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
  const shown = all ? limits : limits.filter((one) => one === limit);
  const why =
    silent || PLAIN.has(judgement.why.code)
      ? undefined
      : judgement.why.params.by === 0
        ? t("limit.on")
        : titled(judgement.why);
  return (
    <>
      {shown.map((one) => {
        const said = boundWords(t, one, quantity);
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
