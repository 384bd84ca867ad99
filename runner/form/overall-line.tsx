import type { Checklist, Judgement } from "@roundbook/schemas";
import { Verdict } from "./look/verdict.tsx";
import { useMessages } from "./messages/messages.tsx";
import { pendingOf, reservationsOf, tallyOf } from "./model/tally.ts";

export interface OverallLineProps {
  readonly document: Checklist;
  readonly issue: number | undefined;
  readonly judgement: Judgement;
}

/** The overall verdict, how it is made up, and by whose limits. */
export function OverallLine({ document, issue, judgement }: OverallLineProps) {
  const { t } = useMessages();
  const { overall } = judgement;
  const { asked, verdicts } = tallyOf(judgement);
  const pending = pendingOf(judgement).length;
  const parts = verdicts.map(({ verdict, count }) => t(`tally.${verdict}`, { count }));
  const reserved = reservationsOf(judgement).map((one) => t(`reservation.${one}`));
  return (
    <div className="overall leaf-words">
      <div className="overall-line">
        <Verdict
          verdict={overall ?? "not-evaluated"}
          word={t(overall === null ? "verdict.none" : `verdict.${overall}`)}
        />
        <p>
          <strong>{t("finish.points", { count: asked })}</strong> {parts.join(", ")}
        </p>
      </div>
      {reserved.length > 0 && <p className="danger">{reserved.join(", ")}</p>}
      {pending > 0 && (
        <p>
          <strong>{t("pending.says", { count: pending })}</strong>{" "}
          {overall === "undecided" && t("pending.none")}
        </p>
      )}
      <p className="second">
        {issue === undefined
          ? t("finish.limits-of", { title: document.title })
          : t("finish.limits-of-issue", { title: document.title, issue })}
      </p>
    </div>
  );
}
