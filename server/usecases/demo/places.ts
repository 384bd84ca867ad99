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
    code: "7",
    name: "Lightkeepers’ Cottages",
    rooms: [
      ["7.1", "North cottage"],
      ["7.2", "South cottage"],
      ["7.3", "Plant cupboard"],
    ],
  },
] as const;
