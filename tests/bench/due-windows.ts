import { type CivilDate, computeWindow, formatCivilDate } from "@roundbook/schemas";
import { rrulestr } from "rrule";
import { between } from "../../schemas/due/rrule/occurrences.ts";
import { readRrule } from "../../schemas/due/rrule/read-rrule.ts";
import { windowByTemporal } from "./due-by-temporal.ts";
import { type DueCase, dueCases } from "./due-mix.ts";
import { rates } from "./measure.ts";
import { type Row, rateRow } from "./row.ts";

const WINDOWS = 1_000_000;
/** Assets at once: few, so that collecting what was made for them is not counted as computing. */
const BATCH = 250;
const TEMPORAL_BATCHES = 200;
const WARM_UP = 80;
const LEAST_PER_SECOND = 150_000;
const MOST_GROWTH_MB = 64;

const now = (): number => Number(process.hrtime.bigint()) / 1e6;
const residentMb = (): number => process.memoryUsage().rss / 2 ** 20;

/** Both have to come to the same dates, or one of them is measured at something else. */
function mustAgree(cases: readonly DueCase[]): void {
  for (const one of cases) {
    const { due, latest } = computeWindow(one.rule, one.facts);
    const other = windowByTemporal(one);
    const [ours, theirs] = [
      [due, latest].map(formatCivilDate).join(" to "),
      `${other.due} to ${other.latest}`,
    ];
    if (ours !== theirs) throw new Error(`${one.rule.kind}: ${ours}, by Temporal ${theirs}`);
  }
}

interface Measured {
  readonly perSecond: number;
  readonly growthMb: number;
}

/** Computes a million windows in batches, as the server does; only the computing is timed. */
function measureWindows(): Measured {
  let elapsed = 0;
  let first = 0;
  let most = 0;
  let sink = 0;
  const batches = WINDOWS / BATCH;
  for (let batch = -WARM_UP; batch < batches; batch += 1) {
    const cases = dueCases(Math.max(0, batch) * BATCH, BATCH);
    const start = now();
    for (const { rule, facts } of cases) sink += computeWindow(rule, facts).due;
    if (batch < 0) continue;
    elapsed += now() - start;
    // What the first half has taken is the working set of the run.
    if (batch < batches / 2) first = Math.max(first, residentMb());
    else most = Math.max(most, residentMb());
  }
  if (sink < 0) throw new Error("unreachable");
  return { perSecond: (WINDOWS * 1000) / elapsed, growthMb: Math.max(0, most - first) };
}

function measureTemporal(): number {
  let elapsed = 0;
  let sink = 0;
  for (let batch = -WARM_UP; batch < TEMPORAL_BATCHES; batch += 1) {
    const cases = dueCases(Math.max(0, batch) * BATCH, BATCH);
    const start = now();
    for (const one of cases) sink += windowByTemporal(one).due.day;
    if (batch >= 0) elapsed += now() - start;
  }
  if (sink < 0) throw new Error("unreachable");
  return (TEMPORAL_BATCHES * BATCH * 1000) / elapsed;
}

const RULES = [
  "FREQ=MONTHLY;BYMONTHDAY=15",
  "FREQ=WEEKLY;INTERVAL=2;BYDAY=MO,TH",
  "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1MO",
  "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-1",
];
const YEARS = 10;

/** Occurrences of ten years a second, by each of the two. */
function benchOccurrences(): Row {
  const start = 18_262 as CivilDate;
  const end = (start + YEARS * 365) as CivilDate;
  const ours = RULES.map((text) => readRrule(text));
  // The library keeps what it found: without a cache it finds it again, as we do.
  const theirs = RULES.map((text) => rrulestr(`DTSTART:20200101T000000Z\nRRULE:${text}`));
  const till = new Date(end * 86_400_000);
  const since = new Date(start * 86_400_000);
  let [mine, its] = [0, 0];
  const [byUs = 0, byLibrary = 0] = rates(
    [
      () => {
        mine = 0;
        for (const rule of ours) mine += between(rule, start, start, end).length;
      },
      () => {
        its = 0;
        for (const rule of theirs) its += rule.clone().between(since, till, true).length;
      },
    ],
    7,
  );
  if (mine !== its) throw new Error(`${mine} occurrences, by the library ${its}`);
  const row = rateRow(
    "occurrences of four RRULEs over ten years",
    "the rrule library",
    byUs * mine,
    byLibrary * its,
    "occurrences",
  );
  return { ...row, target: "≥ 1", met: row.ratio !== null && row.ratio >= 1 };
}

/** Due windows of a million assets on one core, explained, against Temporal without a word of why. */
export function benchDueWindows(): Row[] {
  mustAgree(dueCases(0, 40 * BATCH));
  const { perSecond, growthMb } = measureWindows();
  return [
    {
      ...rateRow(
        "compute 1,000,000 due windows, explained",
        "with Temporal, dates only",
        perSecond,
        measureTemporal(),
        "windows",
      ),
      target: `≥ ${LEAST_PER_SECOND.toLocaleString("en-GB").replaceAll(",", " ")}/s`,
      met: perSecond >= LEAST_PER_SECOND,
    },
    {
      what: "memory while computing them",
      against: "its own first half",
      ratio: null,
      figure: `${growthMb.toFixed(0)} MB more`,
      target: `≤ ${MOST_GROWTH_MB} MB`,
      met: growthMb <= MOST_GROWTH_MB,
    },
    benchOccurrences(),
  ];
}
