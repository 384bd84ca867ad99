import type { Answers, Particulars, Reading } from "../checklist/answer-types.ts";
import type { Checklist, ParticularDefinitions } from "../checklist/meta-schema.ts";
import type { CalendarData } from "../due/calendar-schema.ts";
import type { IntervalDefinition } from "../due/interval-schema.ts";
import type { DueStatus } from "../due/window.ts";
import type { Judgement, OverallVerdict } from "../judge/judgement.ts";
import type { BodyOf, Entry, EntryOf, SealedLeaf } from "../log/entry.ts";
import type { Explanation } from "../shared/problem.ts";
import type { IntervalProgress, OverrideRow } from "./due.ts";

/** Replies of the read routes. Civil dates are ISO strings on the wire, instants RFC 3339. */

export interface PlaceRow {
  readonly id: string;
  readonly parent: string | null;
  readonly level: "site" | "building" | "floor" | "room";
  readonly code: string;
  readonly name: string;
  readonly zone: string;
  readonly order: number;
  /** Person or team that does its rounds, where it is named for this place itself. */
  readonly keeper?: string | null;
}

export type AssetStatus = BodyOf<"status-changed">["status"];

export interface AssetRow {
  readonly id: string;
  readonly number: string;
  readonly assetType: string;
  readonly description: string;
  readonly site: string;
  readonly place: string;
  /** Names from the site down, such as ["Boat Workshop", "Slipway"]. */
  readonly path: readonly string[];
  readonly particulars: Particulars;
  readonly serial: string | null;
  /** SHA-256 of a picture of it, taken when it was registered. */
  readonly photo?: string;
  readonly status: AssetStatus;
  readonly order: number;
  readonly registeredOn: string;
}

export interface DueRow {
  readonly asset: string;
  readonly number: string;
  readonly description: string;
  readonly site: string;
  readonly place: string;
  readonly interval: string;
  readonly intervalTitle: string;
  readonly assetType: string;
  readonly checklist: string;
  /** Person or team that does the rounds of its place. */
  readonly keeper: string | null;
  /** Minutes the check is expected to take. */
  readonly minutes: number;
  readonly earliest: string;
  readonly due: string;
  readonly latest: string;
  readonly status: DueStatus;
  readonly lastDone: string | null;
  readonly lastVerdict: OverallVerdict;
  readonly why: Explanation;
  /** Where a closure moved it: since when it is excused or blocked, and when it reopens. */
  readonly closure?: {
    readonly status: "excused" | "blocked";
    readonly from: string;
    readonly reopens: string;
  };
}

export interface ChecklistRow {
  readonly id: string;
  readonly issue: number;
  readonly hash: string;
  readonly title: string;
  readonly status: "issued" | "withdrawn";
  readonly issuedOn: string;
  readonly document: Checklist;
}

export interface AssetTypeRow {
  readonly assetType: string;
  readonly version: number;
  readonly title: string;
  readonly particulars: ParticularDefinitions;
  readonly checklists: readonly string[];
}

export interface IntervalRow {
  readonly id: string;
  readonly definition: IntervalDefinition;
  /** Set while dates by a change are worked out; until then those of `definition` hold. */
  readonly progress?: IntervalProgress;
}

export interface DefectRow {
  readonly id: string;
  /** Number people call it by. */
  readonly number: number;
  readonly asset: string;
  readonly assetNumber: string;
  readonly assetDescription: string;
  readonly site: string;
  readonly point: string;
  readonly title: string;
  readonly grade: "danger-now" | "by-a-date" | "observation";
  readonly by: string | null;
  readonly raisedOn: string;
  readonly raisedBy: string;
  readonly step: "raised" | "made-safe" | "repaired" | "verified" | "deferred";
  /** A later reading on the same point passed; it still has to be verified. */
  readonly passedSince: string | null;
}

export interface PersonRow {
  readonly id: string;
  /** Empty when erased. */
  readonly name: string;
  readonly role: "owner" | "manager" | "inspector" | "auditor";
  /** For rounds; absent where nobody said. */
  readonly minutesAWeek?: number;
}

export interface LastResult {
  readonly asset: string;
  readonly checklist: string;
  readonly entry: string;
  readonly on: string;
  readonly overall: OverallVerdict;
  /** It waits for the result of a sample, so that it does not count as done yet. */
  readonly awaited?: true;
  /** Readings as entered, by point, for the hollow dot on the limit line. */
  readonly readings: Readonly<Record<string, Reading>>;
  /**
   * Answers of the last complete inspection, results of its samples included; only where the
   * checklist compares with them (`sameAsLast`) and there is one.
   */
  readonly previous?: Answers;
}

/** What came after an inspection: results of its samples, the oldest first. */
export interface ReceivedResults {
  readonly entries: readonly EntryOf<"result-received">[];
  /** The inspection judged again with all of them. */
  readonly judgement: Judgement;
  /** Sequence number of the result since which its overall verdict is what it is now. */
  readonly since: number;
}

/** One entry as history shows it: with the names and texts that still stand beside the log. */
export interface HistoryEntry {
  readonly entry: Entry;
  readonly leaf: SealedLeaf;
  readonly authorName: string;
  /** What the asset is called today; null for an entry that is about no asset. */
  readonly about: { readonly number: string; readonly description: string } | null;
  /** Texts by commitment. */
  readonly contents: Readonly<Record<string, string>>;
  /** Of an inspection whose samples have got results since. */
  readonly received?: ReceivedResults;
  /** Of an inspection: titles of the shorter checks that it stood for as well. */
  readonly covered?: readonly string[];
  /** Of a result: the label on the bottle of its sample. */
  readonly sample?: string;
}

/** Everything a device needs to walk one site's round without a network. */
export interface SiteBundle {
  readonly site: PlaceRow;
  readonly places: readonly PlaceRow[];
  readonly assets: readonly AssetRow[];
  readonly due: readonly DueRow[];
  readonly assetTypes: readonly AssetTypeRow[];
  readonly intervals: readonly IntervalRow[];
  /** When the site is closed, holidays included. */
  readonly calendar: CalendarData;
  readonly overrides: readonly OverrideRow[];
  /** Issued checklists that the site's assets use, newest issue of each. */
  readonly checklists: readonly ChecklistRow[];
  readonly lastResults: readonly LastResult[];
  readonly defects: readonly DefectRow[];
  /** Newest sequence number this bundle knows; the next refresh asks for what came after. */
  readonly cursor: number;
  /** Of what dates follow from beside entries; opaque. */
  readonly stamp: string;
  readonly today: string;
}

/** What changed at a site since a bundle: of the assets that entries were about, all their rows. */
export interface SiteChanges
  extends Pick<
    SiteBundle,
    | "assets"
    | "due"
    | "overrides"
    | "lastResults"
    | "defects"
    | "assetTypes"
    | "intervals"
    | "checklists"
    | "cursor"
    | "stamp"
    | "today"
  > {
  /** Assets that entries were about and that are not at this site. */
  readonly gone: readonly string[];
}

/** A stretch of the log, of one site's assets. */
export interface SiteHistory {
  readonly rows: readonly HistoryEntry[];
  /** Sequence number up to which the log was read. */
  readonly upTo: number;
  readonly more: boolean;
}

export interface Page<Row> {
  readonly rows: readonly Row[];
  /** Opaque; null on the last page. */
  readonly next: string | null;
}
