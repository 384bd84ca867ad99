import {
  type AnswerPlace,
  allowsMember,
  at,
  type Checklist,
  type ChecklistRow,
  type ImportMapping,
  membersSaid,
  nearest,
  type Problem,
  pointKind,
  problem,
  type ResultsMapping,
  repeatsByPoint,
  splitAnswerName,
} from "@roundbook/schemas";
import type { Context } from "../context.ts";
import { readNewestIssue } from "../read-checklists.ts";
import { NEVER_IMPORTED } from "./answer.ts";
import type { Desk } from "./desk.ts";
import { unknownType } from "./new-asset.ts";

/** What is wrong with a mapping in this estate, whatever the rows hold. */
export async function checkMapping(desk: Desk, issued: ChecklistRow | null): Promise<Problem[]> {
  const { mapping, ctx } = desk;
  const makesAssets = mapping.kind === "register" || mapping.createAssets === true;
  const problems = makesAssets ? checkAssets(desk) : [];
  if (mapping.kind === "register") return [...problems, ...(await checkForward(ctx, mapping))];
  if (!issued) return [...problems, problem("/checklist", "unknown-checklist")];
  return [...problems, ...checkPoints(mapping, issued)];
}

function checkAssets({ mapping, types, places }: Desk): Problem[] {
  const { assetType, site, place, particulars } = mapping.asset;
  const problems: Problem[] = [];
  if (assetType === undefined)
    problems.push(problem("/asset", "missing-keyword", { keyword: "assetType" }));
  if (site === undefined && (place ?? []).length === 0 && places.sites().length !== 1)
    problems.push(problem("/asset", "missing-keyword", { keyword: "site" }));
  if (typeof assetType !== "string") return problems;
  const type = types.get(assetType);
  if (!type) return [...problems, unknownType(assetType, [...types.keys()])];
  const known = Object.keys(type.particulars);
  for (const name of Object.keys(particulars ?? {})) {
    if (known.includes(name)) continue;
    const about = { name, nearest: nearest(name, known) };
    problems.push(problem(at("/asset/particulars", name), "unknown-particular", about));
  }
  return problems;
}

async function checkForward(
  ctx: Context,
  mapping: Extract<ImportMapping, { kind: "register" }>,
): Promise<Problem[]> {
  const rows = mapping.broughtForward ?? [];
  const issued = await Promise.all(rows.map(({ checklist }) => readNewestIssue(ctx, checklist)));
  return issued.flatMap((row, index) =>
    row ? [] : [problem(at("/broughtForward", index, "checklist"), "unknown-checklist")],
  );
}

function checkPoints({ answers }: ResultsMapping, { document }: ChecklistRow): Problem[] {
  const known = Object.keys(document.properties);
  return Object.entries(answers).flatMap(([name, how]) => {
    const pointer = at("/answers", name);
    const place = splitAnswerName(name);
    const point = known.includes(place.point) ? document.properties[place.point] : undefined;
    if (!point)
      return [
        problem(pointer, "unknown-point", {
          point: place.point,
          nearest: nearest(place.point, known),
        }),
      ];
    const kind = pointKind(point);
    if (NEVER_IMPORTED.has(kind)) return [problem(pointer, "import-never", { kind })];
    const strange = checkMember(document, place);
    if (strange) return [problem(pointer, "unknown-member", strange)];
    for (const [keyword, needed] of [
      ["more", "readings"],
      ["elapsed", "reading"],
    ] as const)
      if (how?.[keyword] !== undefined && kind !== needed)
        return [problem(at(pointer, keyword), "keyword-wrong-kind", { keyword, kind })];
    const unit = how?.unit;
    const accepted = [point.quantity?.unit ?? "1", ...(point.quantity?.alsoIn ?? [])];
    if (unit === undefined || accepted.includes(unit)) return [];
    return [problem(at(pointer, "unit"), "unit-not-accepted", { unit, accepted })];
  });
}

/** A point of a repeat is answered for a member, and a member only for a point of a repeat. */
function checkMember(document: Checklist, { point, member }: AnswerPlace) {
  const repeat = repeatsByPoint(document).get(point)?.repeat;
  if (repeat === undefined) return member === null ? null : { point, member, members: [] };
  if (member !== null && allowsMember(repeat, member)) return null;
  return { point, member, members: membersSaid(repeat) };
}
