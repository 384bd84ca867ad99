export const ZONE = "Europe/London";
export const ESTATE = "Vennasay Harbour Trust";

/** Sites of the trust with their rooms, by code, in walking order. */
export const SITES = [
  {
    code: "1",
    name: "Harbour Office",
    rooms: [
      ["1.1", "Front office"],
      ["1.2", "Stores"],
      ["1.3", "Washroom"],
    ],
  },
  {
    code: "4",
    name: "Boat Workshop",
    rooms: [
      ["4.1", "Slipway"],
      ["4.2", "Machine shop"],
      ["4.3", "Paint store"],
      ["4.4", "Sail loft"],
    ],
  },
  {
    code: "5",
    name: "Bunkhouse",
    rooms: [
      ["5.1", "Kitchen"],
      ["5.2", "Washroom"],
    ],
  },
  {
    code: "7",
    name: "Lightkeepers’ Cottages",
    rooms: [
      ["7.1", "North cottage"],
      ["7.2", "South cottage"],
      ["7.3", "Plant cupboard"],
    ],
  },
  {
    code: "8",
    name: "Fuel and Vehicle Yard",
    rooms: [["8.1", "Garage"]],
  },
] as const;

/** When a site is closed; the holidays of the region go back to the last working day before. */
export const REGION = "GB-ENG";
export const WEEKEND = [
  { weekday: 6, reason: "Saturday" },
  { weekday: 7, reason: "Sunday" },
];
export const SEASONS: Readonly<Record<string, { from: string; to: string; reason: string }>> = {
  "5": { from: "11-01", to: "03-31", reason: "closed for the winter" },
};
/** Who keeps which site. */
export const KEEPERS = { "1": "dag", "4": "dag", "5": "isel", "7": "isel", "8": "dag" } as const;
export type SiteCode = keyof typeof KEEPERS;
