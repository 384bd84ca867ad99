import type { LimitJudgement, PointJudgement, QuantityDefinition } from "@roundbook/schemas";
import { printQuantity } from "../look/print-unit.ts";
import { Equation } from "../look/reading-box.tsx";
import { useMessages } from "../messages/messages.tsx";
import { useTitled } from "../messages/titled.tsx";
import { boundDecimals, decidingLimit } from "../model/limit-drawing.ts";

export interface LimitWordsProps {
  readonly quantity: QuantityDefinition | undefined;
  readonly judgement: PointJudgement;
  readonly limits: readonly LimitJudgement[];
}

/** "max 0.233 Ω = 0.1 + 10 × 0.0133", then how far off, then the basis. */
export function LimitWords({ quantity, judgement, limits }: LimitWordsProps) {
  const { t } = useMessages();
  const titled = useTitled();
  const limit = decidingLimit(limits, judgement);
  const said = limit && boundWords(t, limit, quantity);
  // "Not answered" needs no sentence under a limit that is there to be met.
  const silent = judgement.why.code === "not-answered" || judgement.why.code === "no-limits";
  const why = silent
    ? undefined
    : judgement.why.params.by === 0
      ? t("limit.on")
      : titled(judgement.why);
  return (
    <>
      {said !== undefined && (
        <Equation>
          {limit?.working === undefined
            ? said
            : t("limit.equation", { limit: said, working: limit.working })}
        </Equation>
      )}
      {(why !== undefined || limit?.basis !== undefined) && (
        <p className="second">
          {why !== undefined && <span className={toneOf(judgement)}>{why}</span>} {limit?.basis}
        </p>
      )}
    </>
  );
}

/** "max 0.233 Ω"; nothing for a list of accepted answers. */
export function boundWords(
  t: ReturnType<typeof useMessages>["t"],
  { kind, bound }: LimitJudgement,
  quantity: QuantityDefinition | undefined,
): string | undefined {
  if (kind === "accept" || bound === null) return undefined;
  const decimals = boundDecimals(bound, quantity?.decimals);
  return t(`limit.${kind}`, { bound: printQuantity(bound, quantity?.unit ?? "1", { decimals }) });
}

const toneOf = ({ verdict }: PointJudgement): string | undefined => {
  if (verdict === "fail") return "danger";
  return verdict === "pass" ? "within" : undefined;
};
