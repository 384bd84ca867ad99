import {
  type ParticularDefinitions,
  type Particulars,
  type PatternEngine,
  parseParticulars,
  particularsInOrder,
  usesPatterns,
} from "@roundbook/schemas";
import type { FieldErrors, UseFormRegister } from "react-hook-form";
import {
  english,
  FieldPair,
  LineField,
  loadPatterns,
  printUnit,
  SelectField,
} from "../form/index.ts";
import { book } from "../messages/book.ts";

export interface AddFields {
  number: string;
  place: string;
  assetType: string;
  description: string;
  serial: string;
  particulars: Record<string, string>;
}

const isNumeric = (type: string | undefined, choices: readonly unknown[] | undefined): boolean =>
  type === "number" ||
  type === "integer" ||
  (choices?.every((one) => typeof one === "number") ?? false);

/** Typed text as the particular's own kind; undefined when nothing was typed, null when it is none. */
export const readParticular = (
  definition: ParticularDefinitions[string],
  typed: string,
): number | string | boolean | null | undefined => {
  const text = typed.trim();
  if (text === "") return undefined;
  if (definition.type === "boolean") return text === "true";
  if (!isNumeric(definition.type, definition.enum)) return text;
  const value = Number(text.replace(",", "."));
  return Number.isFinite(value) ? value : null;
};

export const particularsOf = (
  definitions: ParticularDefinitions,
  typed: Readonly<Record<string, string>>,
): Particulars =>
  Object.fromEntries(
    Object.entries(definitions).flatMap(([name, definition]) => {
      const value = readParticular(definition, typed[name] ?? "");
      return value === undefined || value === null ? [] : [[name, value]];
    }),
  );

/** Offline before it was kept there is no engine: the server checks what arrives in any case. */
const patternsFor = async (
  definitions: ParticularDefinitions,
): Promise<PatternEngine | undefined> =>
  usesPatterns({ particulars: definitions }) ? loadPatterns().catch(() => undefined) : undefined;

/** What is wrong with what was typed, in words; true when it is a value the particular may have. */
export const checkParticular = async (
  name: string,
  definition: ParticularDefinitions[string],
  typed: string,
): Promise<true | string> => {
  const value = readParticular(definition, typed);
  if (value === undefined) return true;
  if (value === null) return book("add.not-a-number");
  const definitions = { [name]: definition };
  const patterns = await patternsFor(definitions);
  const [wrong] = parseParticulars(definitions, { [name]: value }, patterns);
  if (wrong === undefined) return true;
  return english.say({ ...wrong, params: { ...wrong.params, name: definition.title } });
};

/** What may be chosen; null where it is written. */
const choicesOf = ({ enum: among, type }: ParticularDefinitions[string]) =>
  type === "boolean"
    ? [
        { value: "true", label: book("particular.yes") },
        { value: "false", label: book("particular.no") },
      ]
    : (among?.map((one) => ({ value: String(one), label: String(one) })) ?? null);

/** A field for each particular of the chosen type; none is required to register an asset. */
export const ParticularFields = ({
  definitions,
  register,
  errors,
}: {
  readonly definitions: ParticularDefinitions;
  readonly register: UseFormRegister<AddFields>;
  readonly errors: FieldErrors<AddFields>;
}) => (
  <FieldPair>
    {particularsInOrder(definitions).map(([name, definition]) => {
      const choices = choicesOf(definition);
      const field = register(`particulars.${name}`, {
        validate: (typed) => checkParticular(name, definition, typed ?? ""),
      });
      const label = definition.title;
      const error = errors.particulars?.[name]?.message;
      return choices ? (
        <SelectField
          key={name}
          label={definition.unit ? `${label}, ${printUnit(definition.unit)}` : label}
          none={book("add.optional")}
          options={choices}
          error={error}
          {...field}
        />
      ) : (
        <LineField
          key={name}
          label={label}
          trail={definition.unit && printUnit(definition.unit)}
          inputMode={isNumeric(definition.type, definition.enum) ? "decimal" : undefined}
          error={error}
          {...field}
        />
      );
    })}
  </FieldPair>
);
