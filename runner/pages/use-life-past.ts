import { type AssetRow, type CivilDate, calendarOf, type SiteBundle } from "@roundbook/schemas";
import { useMemo } from "react";
import { dayOf } from "./due-of.tsx";
import { gapsOf, type HistoryGap, recordsOf } from "./life-gaps.ts";
import { type ReadingSeries, seriesOf } from "./life-readings.ts";
import { usePast } from "./use-past.ts";

/** Plots that are drawn; the most read come first. */
const MOST_PLOTS = 3;

/** What the whole history of an asset tells: readings over time, and what was missed. */
export const useLifePast = (asset: AssetRow, bundle: SiteBundle | undefined, today: CivilDate) => {
  const history = usePast(asset.id);
  const rows = history.data?.rows;
  const told = useMemo(() => {
    const intervals =
      bundle?.intervals.filter(({ definition }) => definition.assetType === asset.assetType) ?? [];
    const overridden = new Set(
      bundle?.overrides.filter((one) => one.asset === asset.id).map(({ interval }) => interval),
    );
    const found =
      rows === undefined || bundle === undefined
        ? []
        : intervals
            // Since when a rule of its own held is not known here.
            .filter(({ id }) => !overridden.has(id))
            .flatMap((interval) =>
              gapsOf(
                interval,
                recordsOf(rows, interval),
                {
                  registered: dayOf(asset.registeredOn),
                  calendar: calendarOf(bundle.calendar),
                  particulars: asset.particulars,
                },
                today,
              ),
            );
    const series: readonly ReadingSeries[] =
      rows === undefined || bundle === undefined
        ? []
        : seriesOf(rows, bundle.checklists)
            .toSorted((a, b) => b.readings.length - a.readings.length)
            .slice(0, MOST_PLOTS);
    const gapsOfChecklist = (checklist: string): readonly HistoryGap[] => {
      const own = intervals.filter(({ definition }) => definition.checklist === checklist);
      return found.filter(({ interval }) => own.some(({ id }) => id === interval));
    };
    return { gaps: found, series, gapsOf: gapsOfChecklist };
  }, [rows, bundle, asset, today]);
  return { ...told, history };
};
