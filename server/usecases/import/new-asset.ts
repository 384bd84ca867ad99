import { at, problem } from "@roundbook/schemas";
import type { Made } from "../append-entries.ts";
import { type Desk, fault, type KnownAsset, type NamedRow } from "./desk.ts";
import { contentOf, derivedId } from "./identity.ts";
import { readParticulars } from "./particular.ts";
import type { FoundPlace } from "./place-tree.ts";
import type { Fault } from "./tally.ts";

const LONGEST_LABEL = 200;

export type NewAsset =
  | { readonly asset: KnownAsset; readonly places: FoundPlace["added"]; readonly made: Made }
  | { readonly faults: readonly Fault[] };

/** The registration a row gives rise to, or why it cannot. */
export function newAsset(desk: Desk, row: NamedRow): NewAsset {
  const { mapping, types } = desk;
  const { cell, number } = row;
  const faults: Fault[] = [];
  const typeName = typeOf(desk, row);
  const type = types.get(typeName.name);
  if (!type)
    return { faults: [fault(typeName.column, unknownType(typeName.name, [...types.keys()]))] };
  const label = (name: "description" | "serial"): string => {
    const column = mapping.asset[name];
    const text = column === undefined ? "" : cell(column);
    if (text.length > LONGEST_LABEL)
      faults.push(
        fault(
          column ?? null,
          problem(at("/asset", name), "label-too-long", {
            length: text.length,
            limit: LONGEST_LABEL,
          }),
        ),
      );
    return text;
  };
  const description = label("description") || type.title;
  const serial = label("serial") || null;
  const place = findPlace(desk, row);
  if ("code" in place)
    faults.push(fault(mapping.asset.place?.at(-1) ?? null, { ...place, pointer: "/asset/place" }));
  const read = readParticulars(
    type.particulars,
    mapping.asset.particulars ?? {},
    cell,
    desk.decimal,
  );
  faults.push(...read.faults);
  if (faults.length > 0 || "code" in place) return { faults };
  const { particulars } = read;
  const id = derivedId("asset", mapping.source, row.numberKey);
  const about = { number, assetType: typeName.name, description, place: place.place, particulars };
  const key = mapping.kind === "register" ? row.key : number;
  const content = mapping.kind === "register" ? row.content : contentOf({ number });
  return {
    asset: { ...about, id, serial },
    places: place.added,
    made: {
      kind: "registered",
      id:
        mapping.kind === "register"
          ? row.entry
          : derivedId("registered", mapping.source, row.numberKey),
      asset: id,
      author: desk.by.person,
      civilDate: desk.today,
      happenedAt: null,
      body: {
        ...about,
        ...(serial === null ? {} : { serial }),
        source: { name: mapping.source, key, content },
      },
    },
  };
}

function typeOf({ mapping }: Desk, { cell }: NamedRow): { name: string; column: string | null } {
  const { assetType } = mapping.asset;
  if (typeof assetType === "object")
    return { name: cell(assetType.column), column: assetType.column };
  return { name: assetType ?? "", column: null };
}

export const unknownType = (assetType: string, known: readonly string[]) =>
  problem("/asset/assetType", "unknown-asset-type", { assetType, known: known.slice(0, 50) });

/** The place a row names; the only site of the estate when the mapping names none. */
function findPlace({ mapping, places }: Desk, { cell }: NamedRow) {
  const { site, place = [] } = mapping.asset;
  const path = place.map(cell).filter((name) => name !== "");
  if (place.length > 0 && path.length === 0 && site === undefined)
    return problem("", "place-missing");
  if (site !== undefined) path.unshift(site);
  const [only] = places.sites();
  if (path.length === 0 && only !== undefined) return { place: only, added: [] };
  return places.find(path);
}
