import { LineField, printUnit, SelectField } from "@roundbook/runner/form";
import type { ParticularDefinition, Particulars } from "@roundbook/schemas";
import type { UseFormRegisterReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import { particularKind } from "../model/around-edit.ts";
import { readNumber } from "../model/read-number.ts";

/** A particular as it was typed or chosen; undefined when it is not known. */
export const particularOf = (
  definition: ParticularDefinition,
  typed: string | undefined,
): Particulars[string] | undefined => {
  const text = typed?.trim() ?? "";
  if (text === "") return undefined;
  const kind = particularKind(definition);
  if (kind === "boolean") return text === "true";
  return kind === "number" ? (readNumber(text) ?? text) : text;
};

/** What is wrong with a particular before the server is asked; true when nothing is. */
export const particularFits = (definition: ParticularDefinition, typed: string | undefined) =>
  particularKind(definition) !== "number" ||
  typeof particularOf(definition, typed) !== "string" ||
  es("asset.no-number");

/** One particular of the type, chosen where its values are listed. */
export const ParticularField = ({
  definition,
  error,
  field,
}: {
  readonly definition: ParticularDefinition;
  readonly error: string | undefined;
  readonly field: UseFormRegisterReturn;
}) => {
  const { title, unit, enum: choices } = definition;
  const listed =
    choices?.map((one) => ({ value: String(one), label: String(one) })) ??
    (particularKind(definition) === "boolean"
      ? [
          { value: "true", label: es("asset.yes") },
          { value: "false", label: es("asset.no") },
        ]
      : undefined);
  if (listed)
    return (
      <SelectField
        label={title}
        help={unit && es("import.in-unit", { unit: printUnit(unit) })}
        none={es("asset.unknown")}
        options={listed}
        error={error}
        {...field}
      />
    );
  return (
    <LineField
      label={title}
      type={particularKind(definition) === "date" ? "date" : "text"}
      trail={unit && printUnit(unit)}
      autoComplete="off"
      error={error}
      {...field}
    />
  );
};
