import type {
  AssetTypeRow,
  Content,
  ImportMapping,
  Particulars,
  Problem,
} from "@roundbook/schemas";
import type { Made } from "../append-entries.ts";
import type { Context, Session } from "../context.ts";
import type { DecimalMark } from "./cell.ts";
import type { BoundColumns } from "./columns.ts";
import type { CsvRow } from "./csv.ts";
import type { PlaceAdded, PlaceTree } from "./place-tree.ts";
import type { Scratch } from "./scratch.ts";
import type { Fault } from "./tally.ts";

/** An asset the register has, or will have once its row is in. */
export interface KnownAsset {
  readonly id: string;
  readonly number: string;
  readonly assetType: string;
  readonly description: string;
  readonly place: string;
  readonly serial: string | null;
  readonly particulars: Particulars;
}

/** What every row of one import is read with. */
export interface Desk<M extends ImportMapping = ImportMapping> {
  readonly ctx: Context;
  readonly by: Session;
  readonly mapping: M;
  readonly columns: BoundColumns;
  readonly decimal: DecimalMark;
  /** ISO civil date of the import. */
  readonly today: string;
  readonly types: ReadonlyMap<string, AssetTypeRow>;
  readonly places: PlaceTree;
  readonly scratch: Scratch;
}

/** A row with the texts its identity stands on, before anything else is read. */
export interface NamedRow {
  readonly source: CsvRow;
  readonly cell: (column: string) => string;
  readonly number: string;
  /** The number as it is looked up. */
  readonly numberKey: string;
  /** Key in the row's `source`: the mapped one, or content and occurrence number. */
  readonly key: string;
  readonly content: string;
  readonly entry: string;
}

/** What a good row adds; a row without any of it was imported before. */
export interface RowDraft {
  readonly entries: readonly Made[];
  readonly contents: readonly Content[];
  readonly asset: KnownAsset | null;
  readonly places: readonly PlaceAdded[];
}

export type RowOutcome =
  | { readonly outcome: "new"; readonly draft: RowDraft }
  | { readonly outcome: "already" }
  | { readonly outcome: "bad"; readonly faults: readonly Fault[] };

export const already: RowOutcome = { outcome: "already" };
export const badRow = (...faults: readonly Fault[]): RowOutcome => ({ outcome: "bad", faults });
export const fault = (column: string | null, problem: Problem): Fault => ({ column, problem });
