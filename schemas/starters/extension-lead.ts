import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import {
  csa,
  DAMAGE_STOPS,
  EARTH_STOPS,
  ELECTRICAL_CAUTIONS,
  FLEXIBLE_CONDUCTOR,
  insulation,
  JOINTS,
  LOOK_POINTS,
  POLARITY,
} from "./electrical-parts.ts";
import {
  byDate,
  COMMON_PRACTICE,
  draft,
  measured,
  must,
  row,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  length: { title: "Length", type: "number", unit: "m", minimum: 0.5, maximum: 100 },
  csa: csa("Conductor cross-section"),
  earthed: { title: "With an earth conductor", type: "boolean" },
  sockets: { title: "Socket outlets", type: "integer", minimum: 1, maximum: 20 },
  rcd: { title: "With a residual-current device", type: "boolean" },
};

const LENGTH_BASIS = "Longest lead without a residual-current device, IET Code of Practice";

// A lead has no case of its own: its sockets are looked at one by one.
const { enclosure: _, ...lookPoints } = LOOK_POINTS;

export const EXTENSION_LEAD: Starter = {
  key: "extension-lead",
  title: "Extension lead or cord set",
  assetType: { name: "extension_lead", title: "Extension lead or cord set", particulars },
  checklist: draft({
    title: "Extension lead or cord set: inspection and test",
    minutes: 6,
    particulars: { ...particulars },
    cautions: [
      ...ELECTRICAL_CAUTIONS,
      "Uncoil a reel before it is loaded: a coiled lead gets hot.",
    ],
    values: {
      joints: JOINTS,
      r_per_m: FLEXIBLE_CONDUCTOR,
      longest: {
        title: "Longest without a residual-current device",
        unit: "m",
        table: {
          policy: "unique",
          inputs: ["asset.csa"],
          rules: [
            row([[0.5, 0.75, 1]], 12, LENGTH_BASIS),
            row([1.5], 15, LENGTH_BASIS),
            row([[2.5, 4]], 25, LENGTH_BASIS),
          ],
        },
      },
    },
    groups: [
      {
        id: "look",
        title: "Look, unplugged",
        points: ["flex", "plug", "suited", "marks"],
        groupAnswer: true,
      },
      { id: "device", title: "Residual-current device", points: ["rcd_fitted"] },
      {
        id: "tests",
        title: "Tests of the whole lead",
        points: ["polarity", "insulation"],
      },
      {
        id: "each_socket",
        title: "Each socket outlet",
        points: ["socket", "earth_continuity"],
        repeat: { each: "Socket outlet", count: "asset.sockets", atMost: 20 },
      },
      { id: "live_tests", title: "Tests, plugged in", points: ["rcd_trip"] },
    ],
    properties: {
      ...lookPoints,
      rcd_fitted: sound(
        "Longer than its cross-section allows: is there a residual-current device?",
        LENGTH_BASIS,
        { grade: byDate("P7D"), ask: must({ when: "asset.length > longest" }) },
      ),
      polarity: POLARITY,
      insulation: insulation([
        { min: 1, basis: "1 MOhm at 500 V, training pages on in-service testing" },
      ]),
      socket: sound("Socket whole, shutters close, no scorching?", COMMON_PRACTICE),
      earth_continuity: measured(
        "Earth continuity to this socket",
        { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3, plausible: { min: 0, max: 20 } },
        [
          {
            max: "joints + asset.length * r_per_m",
            basis: "0.1 Ohm plus the conductor, IEC 60228 class 5 at 20 °C",
          },
          {
            sameAsLast: { within: 0.05, whenNone: "not-applied" },
            severity: "advisory",
            basis: `A rise between two tests points to a joint that works loose. ${COMMON_PRACTICE}`,
          },
        ],
        {
          description: "Flex the lead at plug and socket while you read; the highest counts.",
          ask: must({ when: "asset.earthed", absentAllowed: ["not-measurable"] }),
        },
      ),
      rcd_trip: measured(
        "Trip time at the rated residual current",
        { unit: "ms", alsoIn: ["s"], decimals: 0, plausible: { min: 1, max: 2000 } },
        [{ max: 300, basis: "BS EN 61008-1 table 1, general type" }],
        { ask: must({ when: "asset.rcd" }) },
      ),
    },
    stops: [
      {
        after: ["flex", "plug", "suited"],
        on: ["fail"],
        groups: ["tests", "each_socket", "live_tests"],
        say: DAMAGE_STOPS,
      },
      {
        after: ["polarity", "insulation", "socket", "earth_continuity"],
        on: ["fail"],
        groups: ["live_tests"],
        say: EARTH_STOPS,
      },
    ],
  }),
  interval: {
    title: "Combined inspection and test of leads",
    rule: { kind: "from-last-done", every: "P1Y", early: "P1M", late: "P1M" },
    basis: "HSE INDG236: leads and plugs every 1 to 5 years, by what they feed",
  },
  note: "Earth to each socket by length and cross-section, insulation, polarity.",
};
