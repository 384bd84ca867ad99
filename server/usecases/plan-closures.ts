import {
  type CalendarRow,
  type CivilDate,
  type DueWindow,
  formatCivilDate,
  type Plan,
} from "@roundbook/schemas";

type Told = Plan["closures"][number];
type Tally = { -readonly [K in keyof Told]: Told[K] };

/** Closures of sites that overlap a time, those of each year written with their dates. */
function periodsOf({ site, calendar }: CalendarRow, from: string, to: string): Tally[] {
  const { closures = [], seasons = [] } = calendar;
  const [first, last] = [Number(from.slice(0, 4)) - 1, Number(to.slice(0, 4))];
  const years = Array.from({ length: last - first + 1 }, (_, ahead) => first + ahead);
  const yearly = seasons.flatMap((season) =>
    years.map((year) => ({
      from: `${year}-${season.from}`,
      to: `${season.from <= season.to ? year : year + 1}-${season.to}`,
      reason: season.reason,
    })),
  );
  return [...closures, ...yearly]
    .filter((one) => one.to >= from && one.from <= to)
    .map((one) => ({ site, ...one, excused: 0, broughtForward: 0, onReopening: 0 }));
}

/** What closures do to the checks that would fall into them. */
export class Closures {
  readonly #bySite: ReadonlyMap<string, readonly Tally[]>;

  constructor(calendars: readonly CalendarRow[], from: CivilDate, to: CivilDate) {
    const [first, last] = [formatCivilDate(from), formatCivilDate(to)];
    this.#bySite = new Map(calendars.map((row) => [row.site, periodsOf(row, first, last)]));
  }

  /** Counts a window where one moved it. */
  count(site: string, window: DueWindow): void {
    for (const { code, params } of window.why.moved ?? []) {
      const { closed, reason } = params;
      if (typeof closed !== "string") continue;
      const period = this.#bySite
        .get(site)
        ?.find((one) => one.reason === reason && closed >= one.from && closed <= one.to);
      if (period === undefined) continue;
      if (code === "excused-while-closed") period.excused += 1;
      else if (code === "due-on-reopening") period.onReopening += 1;
      else if (code === "rolled-back") period.broughtForward += 1;
    }
  }

  /** The soonest first; of no site that was not asked for. */
  told(sites: ReadonlySet<string> | null): Told[] {
    const all = [...this.#bySite.values()].flat();
    return all
      .filter(({ site }) => sites === null || sites.has(site))
      .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  }
}
