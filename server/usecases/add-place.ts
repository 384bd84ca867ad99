import { type AddPlace, type PlaceRow, type Problem, problem } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readPlaces } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

const LEVELS = ["site", "building", "floor", "room"] as const;

export const isZone = (zone: string): boolean => {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return true;
  } catch {
    return false;
  }
};

function problemsOf(given: AddPlace, parent: PlaceRow | undefined, sisters: readonly PlaceRow[]) {
  const problems: Problem[] = [];
  if (given.level === "site") {
    if (given.parent !== null) problems.push(problem("/parent", "site-has-no-parent"));
    if (given.zone === undefined)
      problems.push(problem("", "missing-keyword", { keyword: "zone" }));
    else if (!isZone(given.zone))
      problems.push(problem("/zone", "unknown-zone", { zone: given.zone }));
  } else if (!parent) problems.push(problem("/parent", "unknown-place"));
  else if (LEVELS.indexOf(parent.level) >= LEVELS.indexOf(given.level))
    problems.push(
      problem("/level", "place-above-its-parent", { level: given.level, parent: parent.level }),
    );
  if (sisters.some((sister) => sister.code === given.code))
    problems.push(problem("/code", "code-taken", { code: given.code }));
  return problems;
}

/** Adds a site, or a place within one; it comes last in the walking order of its sisters. */
export async function addPlace(
  ctx: Context,
  by: Session,
  given: AddPlace,
): Promise<{ id: string }> {
  const places = await readPlaces(ctx);
  const parent = places.find((place) => place.id === given.parent);
  const sisters = places.filter((place) => place.parent === given.parent);
  const problems = problemsOf(given, parent, sisters);
  if (problems.length > 0) throw new Refusal("invalid", "place-not-right", problems);
  const id = ctx.newId();
  const { level, code, name } = given;
  await appendNow(ctx, by, {
    kind: "place-added",
    asset: null,
    body: {
      place: id,
      parent: given.parent,
      level,
      code,
      name,
      order: sisters.reduce((last, { order }) => Math.max(last, order), 0) + 1,
      ...(level === "site" && given.zone !== undefined ? { zone: given.zone } : {}),
    },
  });
  return { id };
}
