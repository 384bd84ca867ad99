import type { CivilDate, SiteBundle } from "@roundbook/schemas";
import { useLocation } from "wouter";
import { DueMark, MarginBlock, WordLink } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { isOver, type Round, roundOf, toGoOf } from "./round-model.ts";
import { useOtherBundles } from "./use-bundle.ts";
import { useOwnWork } from "./use-kept.ts";

const MARKS = [
  { words: "round.mark-in", window: [-5, 5] },
  { words: "round.mark-last", window: [-10, 0] },
  { words: "round.mark-over", window: [-12, -4] },
  { words: "round.mark-not-yet", window: [3, 12] },
] as const;

/** Beside the round on a desktop: what the marks mean, and what waits at other kept sites. */
export const RoundMarginalia = ({
  bundle,
  round,
  today,
}: {
  readonly bundle: SiteBundle;
  readonly round: Round;
  readonly today: CivilDate;
}) => {
  const { changeSettings, now, settings } = useDevice();
  const [, navigate] = useLocation();
  const own = useOwnWork().data;
  const kept = useOtherBundles(bundle.site.id).data ?? [];
  const others = kept
    .map(({ bundle: other }) => {
      const there = todayAt(other.site.zone, now(), settings.clockOffset);
      const left = own ? toGoOf(roundOf({ bundle: other, ...own }, there)) : [];
      const over = left.filter((row) => isOver(row, there)).length;
      return { site: other.site, open: left.length, over };
    })
    .filter(({ open }) => open > 0);
  return (
    <>
      <MarginBlock title={w("round.marks")}>
        {MARKS.map(({ words, window: [from, to] }) => (
          <p key={words} className="mark-line">
            <DueMark earliest={today + from} due={today + to} latest={today + to} today={today} />{" "}
            {w(words)}
          </p>
        ))}
        {round.all.some(({ status }) => status === "undecided") && (
          <p className="mark-line">
            <DueMark earliest={null} due={null} latest={null} today={today} />{" "}
            {w("round.mark-undecided")}
          </p>
        )}
      </MarginBlock>
      {others.length > 0 && (
        <MarginBlock title={w("round.elsewhere")}>
          {others.map(({ site, open, over }) => (
            <p key={site.id}>
              <strong>{site.code}</strong>{" "}
              <WordLink
                href="/"
                quiet
                onFollow={(href) => {
                  void changeSettings({ site: site.id });
                  navigate(href);
                }}
              >
                {w("round.elsewhere-line", { name: site.name, count: open })}
              </WordLink>
              {over > 0 && (
                <>
                  {", "}
                  <span className="danger">{w("round.elsewhere-over", { count: over })}</span>
                </>
              )}
            </p>
          ))}
        </MarginBlock>
      )}
    </>
  );
};
