import { printUnit } from "@roundbook/runner/form";
import type { LimitDefinition, PointDefinition } from "@roundbook/schemas";

const figure = (bound: number | string | undefined, unit: string | undefined): string =>
  typeof bound === "number" && unit ? `${bound}\u00a0${printUnit(unit)}` : String(bound);

const BOUNDS = [
  ["min", "below"],
  ["max", "above"],
  ["exclusiveMin", "at or below"],
  ["exclusiveMax", "at or above"],
] as const;

const choiceTitle = (point: PointDefinition, value: string | number): string => {
  if (value === "ok") return "OK";
  if (value === "not-ok") return "not OK";
  const option = (point.oneOf ?? []).find((one) => "const" in one && one.const === value);
  return option && "const" in option ? option.title : String(value);
};

/** What a limit means in words: "Fails below 50 °C." */
export const limitSentence = (point: PointDefinition, limit: LimitDefinition): string => {
  const verb = limit.severity === "advisory" ? "Advises" : "Fails";
  const unit = point.quantity?.unit;
  const bounds = BOUNDS.flatMap(([kind, words]) =>
    limit[kind] === undefined ? [] : [`${words} ${figure(limit[kind], unit)}`],
  );
  const accepts = limit.accept?.map((value) => choiceTitle(point, value)).join(", ");
  const what = accepts === undefined ? bounds.join(" or ") : `unless ${accepts}`;
  const when = limit.when ? `, when ${limit.when}` : "";
  return `${verb} ${what}${when}.`;
};
