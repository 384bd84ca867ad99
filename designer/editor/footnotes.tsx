import { Problems, useMessages, useWide, WordButton } from "@roundbook/runner/form";
import { useState } from "react";
import { e } from "../messages/editor.ts";
import { mend, withoutMisplaced } from "../model/mend.ts";
import { useDesk } from "./desk.tsx";
import { blankOf, type Footnoted, placeOf, pointOf } from "./problem-place.ts";

const SHOWN_WIDE = 2;
const SHOWN_NARROW = 1;

/** What stands in the way, docked at the foot: where, what, and the way there or the cure. */
export const Footnotes = ({
  problems,
  onGo,
}: {
  readonly problems: readonly Footnoted[];
  readonly onGo: (point: string | null, blank: string | null) => void;
}) => {
  const { document, whole, apply } = useDesk();
  const { say } = useMessages();
  const [all, setAll] = useState(false);
  const few = useWide() ? SHOWN_WIDE : SHOWN_NARROW;
  const shown = all ? problems : problems.slice(0, few);
  const go = (point: string | null, blank: string | null) => {
    onGo(point, blank);
    requestAnimationFrame(() => {
      const spot =
        window.document.querySelector('.blank[aria-expanded="true"]') ??
        window.document.getElementById(`edit-${point}`);
      spot?.scrollIntoView({ block: "center" });
    });
  };
  const rest = problems.length - few;
  return (
    <Problems
      label={e("ed.problems")}
      footnotes={shown.map(({ number, problem }, at) => {
        const point = pointOf(whole, problem);
        const blank = blankOf(document, problem);
        const place = placeOf(whole, problem);
        const mended = mend(document, problem);
        const left = withoutMisplaced(document, problem);
        return {
          number,
          says: place === null ? say(problem) : `${place}:`,
          right: place === null ? undefined : say(problem),
          actions: (
            <>
              {mended && <WordButton onClick={() => apply(mended)}>{e("f.use")}</WordButton>}
              {left && (
                <WordButton onClick={() => apply(left)}>{e("ed.remove-wording")}</WordButton>
              )}
              {(point !== null || blank !== null) && (
                <WordButton onClick={() => go(point, blank)}>{e("ed.go-there")}</WordButton>
              )}
              {rest > 0 && at === shown.length - 1 && (
                <WordButton quiet onClick={() => setAll(!all)}>
                  {all ? e("ed.fewer-problems") : e("ed.more-problems", { count: rest })}
                </WordButton>
              )}
            </>
          ),
        };
      })}
    />
  );
};
