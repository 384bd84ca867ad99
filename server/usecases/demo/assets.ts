import type { Particulars } from "@roundbook/schemas";
import type { KindName } from "./kinds.ts";

export interface DemoAsset {
  readonly number: string;
  readonly kind: KindName;
  readonly description: string;
  readonly room: string;
  readonly particulars: Particulars;
}

type Row = readonly [number: string, room: string, description: string, ...particulars: unknown[]];

const rowsOf =
  <const R extends Row>(kind: KindName, particulars: (...given: R) => Particulars) =>
  (...rows: readonly R[]): DemoAsset[] =>
    rows.map((row) => {
      const [number, room, description] = row;
      return { number, kind, description, room, particulars: particulars(...row) };
    });

type Cord = readonly [string, string, string, number, number];

const leads = rowsOf<Cord>("extension_lead", (_n, _r, _d, length, csa) => ({
  length,
  csa,
  class: "I",
}));
const portables = rowsOf<Cord>("portable", (_n, _r, _d, length, csa) => ({ length, csa }));
const ladders = rowsOf<readonly [string, string, string, string, number]>(
  "ladder",
  (_n, _r, _d, kind, reach) => ({ kind, reach }),
);
const doors = rowsOf<readonly [string, string, string, number, boolean]>(
  "fire_door",
  (_n, _r, _d, rating, glazed) => ({ rating, glazed }),
);
const outlets = rowsOf<readonly [string, string, string]>("outlet", () => ({}));
const vehicles = rowsOf<readonly [string, string, string]>("vehicle", () => ({}));
const calorifiers = rowsOf<readonly [string, string, string, number]>(
  "calorifier",
  (_n, _r, _d, volume) => ({ volume }),
);

export const ASSETS: readonly DemoAsset[] = [
  ...ladders(
    ["1015", "1.2", "Stepladder, 6 treads", "step", 1.8],
    ["1016", "1.2", "Platform steps", "platform", 1.2],
    ["4012", "4.1", "Extension ladder, 2 × 3.6 m", "extension", 3.6],
    ["4013", "4.1", "Stepladder, 8 treads", "step", 2.4],
    ["4062", "4.4", "Extension ladder, 2 × 2.4 m", "extension", 2.4],
    ["7021", "7.3", "Stepladder, 4 treads", "step", 1.2],
  ),
  ...leads(
    ["1042", "1.1", "Extension lead, 5 m × 1 mm²", 5, 1],
    ["1043", "1.2", "Extension lead, 10 m × 1.5 mm²", 10, 1.5],
    ["4014", "4.1", "Extension lead, 25 m × 2.5 mm²", 25, 2.5],
    ["4016", "4.1", "Extension lead, 15 m × 1.5 mm²", 15, 1.5],
    ["4033", "4.2", "Extension lead, 10 m × 1.5 mm²", 10, 1.5],
    ["4035", "4.2", "Extension lead, 10 m × 1.5 mm²", 10, 1.5],
    ["4066", "4.4", "Extension lead, 10 m × 2.5 mm²", 10, 2.5],
    ["4067", "4.4", "Extension lead, drum, 10 m", 10, 1.5],
    ["7034", "7.1", "Extension lead, 3 m × 1 mm²", 3, 1],
    ["7035", "7.2", "Extension lead, 3 m × 1 mm²", 3, 1],
  ),
  ...portables(
    ["1051", "1.1", "Kettle", 0.75, 0.75],
    ["1052", "1.1", "Photocopier", 2, 0.75],
    ["1053", "1.1", "Fan heater", 1.5, 1],
    ["1054", "1.1", "Desk lamp, metal", 1.8, 0.75],
    ["1055", "1.2", "Refrigerator", 2, 0.75],
    ["1056", "1.2", "Floor polisher", 10, 1],
    ["4017", "4.1", "Pressure washer", 5, 1.5],
    ["4018", "4.1", "Winch charger", 2, 1],
    ["4031", "4.2", "Bench grinder, 150 mm", 2, 1],
    ["4032", "4.2", "Pillar drill", 2.5, 1],
    ["4034", "4.2", "Bench lamp", 2, 0.75],
    ["4036", "4.2", "Vacuum cleaner", 7, 1],
    ["4037", "4.2", "Band saw", 3, 1.5],
    ["4063", "4.4", "Sewing machine, heavy", 2, 0.75],
    ["4064", "4.4", "Steam iron", 2, 0.75],
    ["7041", "7.1", "Toaster", 0.9, 0.75],
    ["7042", "7.1", "Washing machine", 1.5, 1],
    ["7043", "7.2", "Kettle", 0.75, 0.75],
    ["7044", "7.2", "Washing machine", 1.5, 1],
    ["7045", "7.2", "Microwave oven", 1, 1],
    ["7046", "7.3", "Dehumidifier", 2, 0.75],
    ["1057", "1.3", "Hand dryer, portable", 1.5, 1],
    ["4039", "4.3", "Spray pump", 4, 1.5],
  ),
  ...doors(
    ["1021", "1.1", "Fire door, entrance", 30, true],
    ["1022", "1.1", "Fire door, back office", 30, false],
    ["1023", "1.2", "Fire door, stores", 60, false],
    ["1024", "1.3", "Fire door, corridor", 30, true],
    ["4038", "4.2", "Fire door, yard", 60, false],
    ["4058", "4.3", "Fire door, lobby", 30, true],
    ["4059", "4.3", "Fire door, spray booth", 60, false],
    ["4065", "4.4", "Fire door, loft stair", 30, false],
    ["7051", "7.1", "Fire door, kitchen", 30, false],
    ["7052", "7.1", "Fire door, stair", 30, true],
    ["7053", "7.2", "Fire door, kitchen", 30, false],
    ["7054", "7.2", "Fire door, stair", 30, true],
    ["5051", "5.1", "Fire door, kitchen", 30, false],
  ),
  ...outlets(
    ["1061", "1.3", "Wash-hand basin"],
    ["1062", "1.3", "Cleaner’s sink"],
    ["4047", "4.2", "Wash-hand basin"],
    ["4060", "4.3", "Emergency wash basin"],
    ["7061", "7.1", "Kitchen sink"],
    ["7062", "7.1", "Wash-hand basin"],
    ["7064", "7.2", "Wash-hand basin"],
    ["5061", "5.1", "Kitchen sink"],
    ["5062", "5.2", "Shower, left"],
    ["5063", "5.2", "Shower, right"],
  ),
  ...vehicles(
    ["8101", "8.1", "Tractor, tracked"],
    ["8102", "8.1", "Van, 3.5 t"],
    ["8103", "8.1", "Pick-up"],
  ),
  ...calorifiers(["1071", "1.3", "Water heater", 80], ["7104", "7.3", "Calorifier", 300]),
];
