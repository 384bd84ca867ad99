import { at } from "../../shared/problem.ts";
import {
  CLASS_2_PLAIN,
  CLASS_5_PLAIN,
  type ConductorFigure,
} from "../published/electrical-conductors.ts";
import { memory, type NumberOrigin, published, type Step } from "./starter-case.ts";

type Numbers = Readonly<Record<string, NumberOrigin>>;

const conductors = (figures: readonly ConductorFigure[]): Numbers =>
  Object.fromEntries(
    figures.flatMap(({ id, csa, perKm }, index) => {
      const place = at("/values/r_per_m/table/rules", index);
      return [
        [`${place}/when/0`, published(id, csa)],
        [`${place}/then`, published(id, perKm, "Ohm/km")],
      ];
    }),
  );

/** The sizes that starters offer. */
export const FLEXIBLE_NUMBERS: Numbers = {
  "/values/joints/const": published("el-039", 0.1),
  ...conductors(CLASS_5_PLAIN.filter(({ csa }) => csa <= 4)),
};
export const FIXED_NUMBERS: Numbers = {
  "/values/joints/const": published("el-039", 0.1),
  ...conductors(CLASS_2_PLAIN.filter(({ csa }) => csa >= 1)),
};

const flex = Array.from({ length: 6 }, (_, index) =>
  at("/values/fuse_for_flex/table/rules", index),
);
export const FUSE_NUMBERS: Numbers = {
  "/values/fuse_for_load/table/rules/0/when/0/max": published("el-109", 0.7),
  "/values/fuse_for_load/table/rules/0/then": published("el-109", 3),
  "/values/fuse_for_load/table/rules/1/when/0/exclusiveMin": published("el-109", 0.7),
  "/values/fuse_for_load/table/rules/1/then": published("el-110", 13),
  ...Object.fromEntries(
    flex.flatMap((place) =>
      [`${place}/when/0`, `${place}/then`].map((pointer) => [
        pointer,
        memory("BS 7671 table 4F3A, current-carrying capacity of flexible cords"),
      ]),
    ),
  ),
};

export const broken = (sheet: string, ...points: readonly string[]): readonly Step[] =>
  points.map((point) => ({ sheet, point, tries: [["not-ok", "fail"]] }));

export const amount = (unit: string) => (value: number) => ({ value, unit });
export const ohm = amount("Ohm");
export const megohm = amount("MOhm");
export const milliamp = amount("mA");
export const amp = amount("A");
export const ms = amount("ms");
