import type { CivilDate } from "@roundbook/schemas";
import { useLocation } from "wouter";
import { DueMark, MarginBlock, WordLink } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { useDevice } from "./device.tsx";
import { dayOf } from "./due-of.tsx";
import { useBundles } from "./use-bundle.ts";

const MARKS = [
  { words: "round.mark-in", window: [-5, 5] },
  { words: "round.mark-last", window: [-10, 0] },
  { words: "round.mark-over", window: [-12, -4] },
  { words: "round.mark-not-yet", window: [3, 12] },
] as const;

/** Beside the round on a desktop: what the marks mean, and what waits at other kept sites. */
export const RoundMarginalia = ({
  current,
  today,
}: {
  readonly current: string;
  readonly today: CivilDate;
}) => {
  const { changeSettings } = useDevice();
  const [, navigate] = useLocation();
  const others = (useBundles().data ?? [])
    .map((row) => row.bundle)
    .filter((bundle) => bundle.site.id !== current)
    .map(({ site, due }) => ({
      site,
      open: due.filter((row) => dayOf(row.earliest) <= today).length,
      over: due.filter((row) => dayOf(row.latest) < today).length,
    }))
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
