import { type Answers, type Judgement, splitAnswerName } from "@roundbook/schemas";
import { useState } from "react";
import type { Filled } from "./model/filled.ts";
import type { FormPoint, Section } from "./model/sections.ts";
import { askedOf, firstOpen, nextOpen } from "./model/walk.ts";

/** Where on the form a person stands. `open` is the point whose field is shown. */
export type Place =
  | { readonly at: "cautions" }
  | { readonly at: "section"; readonly key: string; readonly open: string | null }
  | { readonly at: "finish" };

export interface Steps {
  readonly place: Place;
  readonly sections: readonly Section[];
  readonly section: Section | undefined;
  /** Where *Next* leads; `undefined` on the last page. */
  readonly ahead: { readonly to: Place; readonly names: string } | undefined;
  readonly back: Place | undefined;
  go(to: Place): void;
  goToPoint(id: string): void;
  open(id: string | null): void;
}

/** Where a wait runs: a clock nobody sees would be read too late. */
function running(
  sections: readonly Section[],
  answers: Answers,
  waits: Filled["waits"],
): Place | undefined {
  for (const { key, points } of sections) {
    const open = points.find(({ id }) => waits[id] !== undefined && answers[id] === undefined);
    if (open) return { at: "section", key, open: open.id };
  }
  return undefined;
}

/** Walks the sections that have something to ask: cautions first, finish last. */
export function useSteps(
  all: readonly Section[],
  judgement: Judgement,
  { answers, waits }: Pick<Filled, "answers" | "waits">,
  cautions: boolean,
): Steps {
  const sections = askedOf(all, judgement);
  const enter = (section: Section | undefined): Place =>
    section
      ? { at: "section", key: section.key, open: firstOpen(section, answers, judgement) }
      : { at: "finish" };
  const [kept, go] = useState<Place>(() =>
    cautions ? { at: "cautions" } : (running(sections, answers, waits) ?? enter(sections[0])),
  );

  // A section may vanish while its answers change; what is left stands in its place.
  const index = kept.at === "section" ? sections.findIndex(({ key }) => key === kept.key) : -1;
  const section = kept.at === "section" ? (sections[index] ?? sections[0]) : undefined;
  const place: Place = kept.at === "section" && section === undefined ? { at: "finish" } : kept;
  const here = section ? sections.indexOf(section) : place.at === "finish" ? sections.length : -1;
  const open = place.at === "section" ? place.open : null;

  const ahead = (): Steps["ahead"] => {
    if (place.at === "finish") return undefined;
    const next = section && nextOpen(section, answers, judgement, open);
    if (section && next) {
      return { to: { at: "section", key: section.key, open: next.id }, names: next.number };
    }
    const following = sections[here + 1];
    return { to: enter(following), names: following?.title ?? "" };
  };
  const before = sections[here - 1];

  return {
    place,
    sections,
    section,
    ahead: ahead(),
    back: before ? enter(before) : here === 0 && cautions ? { at: "cautions" } : undefined,
    go,
    goToPoint(id) {
      // Named without a member, a point of a repeat is its first one.
      const isIt = (point: FormPoint) => point.id === id || splitAnswerName(point.id).point === id;
      const home = sections.find(({ points }) => points.some(isIt));
      const point = home?.points.find(isIt);
      if (home && point) go({ at: "section", key: home.key, open: point.id });
    },
    open(id) {
      if (section) go({ at: "section", key: section.key, open: id });
    },
  };
}
