import {
  type AssetRow,
  calendarOf,
  computeWindow,
  type DueRow,
  expectedMinutes,
  formatCivilDate,
  parseCivilDate,
  type SiteBundle,
  statusOn,
} from "@roundbook/schemas";

/** Windows of an asset that nobody checked yet, as the server will work them out too. */
export const dueOfNew = (bundle: SiteBundle, asset: AssetRow): DueRow[] => {
  const registered = parseCivilDate(asset.registeredOn);
  const today = parseCivilDate(bundle.today);
  if (registered === undefined || today === undefined) return [];
  const calendar = calendarOf(bundle.calendar);
  const { particulars } = asset;
  return bundle.intervals
    .filter(({ definition }) => definition.assetType === asset.assetType)
    .map(({ id, definition }) => {
      const { rule, title, checklist } = definition;
      const window = computeWindow(rule, { done: [], registered, calendar, particulars });
      const { closure, why } = window;
      const document = bundle.checklists.find((row) => row.id === checklist)?.document;
      return {
        asset: asset.id,
        number: asset.number,
        description: asset.description,
        site: asset.site,
        place: asset.place,
        interval: id,
        intervalTitle: title,
        assetType: asset.assetType,
        checklist,
        keeper: null,
        minutes: document === undefined ? 0 : expectedMinutes(document),
        earliest: formatCivilDate(window.earliest),
        due: formatCivilDate(window.due),
        latest: formatCivilDate(window.latest),
        status: statusOn(window, today),
        lastDone: null,
        lastVerdict: null,
        why,
        ...(closure && {
          closure: {
            status: closure.status,
            from: formatCivilDate(closure.from),
            reopens: formatCivilDate(closure.reopens),
          },
        }),
      };
    });
};
