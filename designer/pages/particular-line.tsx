import { FieldPair, LeafWords, LineField, SelectField, WordButton } from "@roundbook/runner/form";
import type { UseFormRegister } from "react-hook-form";
import { d } from "../messages/desk.ts";
import { PARTICULAR_KINDS } from "../model/around-edit.ts";
import type { ParticularField } from "../model/particular-fields.ts";
import { readUnit } from "../model/read-unit.ts";

/** An asset type as its form edits it. */
export interface TypeFields {
  title: string;
  particulars: ParticularField[];
  checklists: string[];
}

/** One particular: what it is, of which kind, and what it may be. */
export const ParticularLine = ({
  at,
  kind,
  title,
  choices,
  unitWrong,
  register,
  onRemove,
}: {
  readonly at: number;
  readonly kind: ParticularField["kind"];
  readonly title: string;
  /** It is one of a few: a range would say nothing more. */
  readonly choices: boolean;
  readonly unitWrong: boolean;
  readonly register: UseFormRegister<TypeFields>;
  readonly onRemove: () => void;
}) => (
  <div className="desk-line">
    <LeafWords>
      <FieldPair>
        <LineField
          label={d("types.p-title")}
          autoComplete="off"
          {...register(`particulars.${at}.title`)}
        />
        <SelectField
          label={d("types.p-kind")}
          options={PARTICULAR_KINDS.map((value) => ({
            value,
            label: d(`types.kind-${value}`),
          }))}
          {...register(`particulars.${at}.kind`)}
        />
      </FieldPair>
      {(kind === "number" || kind === "string") && (
        <FieldPair>
          {kind === "number" && (
            <LineField
              label={d("types.p-unit")}
              placeholder={d("types.p-unit-help")}
              autoComplete="off"
              error={unitWrong ? d("types.p-unit-wrong") : undefined}
              {...register(`particulars.${at}.unit`, {
                validate: (unit) => unit.trim() === "" || readUnit(unit) !== undefined,
              })}
            />
          )}
          <LineField
            label={d("types.p-choices")}
            placeholder={d("types.p-choices-help")}
            autoComplete="off"
            {...register(`particulars.${at}.choices`)}
          />
        </FieldPair>
      )}
      {kind === "number" && !choices && (
        <FieldPair>
          <LineField
            label={d("types.p-min")}
            inputMode="decimal"
            {...register(`particulars.${at}.minimum`)}
          />
          <LineField
            label={d("types.p-max")}
            inputMode="decimal"
            {...register(`particulars.${at}.maximum`)}
          />
        </FieldPair>
      )}
      <WordButton quiet onClick={onRemove}>
        {d("types.p-remove", { title: title || String(at + 1) })}
      </WordButton>
    </LeafWords>
  </div>
);
