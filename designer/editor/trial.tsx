import {
  ChecklistForm,
  FacingHead,
  FramedPage,
  LineField,
  printUnit,
  SelectField,
  TitleBlock,
} from "@roundbook/runner/form";
import type { Particulars } from "@roundbook/schemas";
import { particularsInOrder } from "@roundbook/schemas";
import { useDeferredValue, useMemo, useState } from "react";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { readNumber } from "../model/particular-fields.ts";

const noPhoto = () => Promise.reject(new Error("a trial keeps no photo"));
const noUrl = async () => undefined;

/** The runner's own form, filled as a trial: it leaves no record. */
export const Trial = ({ document }: { readonly document: DraftDocument }) => {
  const [typed, setTyped] = useState<Record<string, string>>({});
  const shown = useDeferredValue(document);
  const definitions = particularsInOrder(shown.particulars ?? {});
  const particulars = useMemo<Particulars>(
    () =>
      Object.fromEntries(
        particularsInOrder(shown.particulars ?? {}).flatMap(([name, definition]) => {
          const text = typed[name]?.trim() ?? "";
          if (text === "") return [];
          const number = readNumber(text);
          const numeric = definition.type === "number" || typeof definition.enum?.[0] === "number";
          return [[name, numeric && number !== undefined ? number : text] as const];
        }),
      ),
    [shown.particulars, typed],
  );
  // A form remembers what it was given first: another document is another form.
  const key = useMemo(() => JSON.stringify([Object.keys(shown.properties), shown.groups]), [shown]);
  const type = (name: string, text: string) => setTyped((before) => ({ ...before, [name]: text }));
  return (
    <>
      <FacingHead title={d("trial.title")} aside={d("trial.aside")} />
      {definitions.length > 0 && (
        <div className="trial-particulars">
          <p className="second">{e("trial.filled")}</p>
          {definitions.map(([name, { title, unit, enum: choices }]) =>
            choices ? (
              <SelectField
                key={name}
                label={title}
                none="…"
                options={choices.map((one) => ({ value: String(one), label: String(one) }))}
                value={typed[name] ?? ""}
                onChange={(event) => type(name, event.target.value)}
              />
            ) : (
              <LineField
                key={name}
                label={title}
                trail={unit && printUnit(unit)}
                value={typed[name] ?? ""}
                onChange={(event) => type(name, event.target.value)}
              />
            ),
          )}
          <p className="second">{e("trial.undecided")}</p>
        </div>
      )}
      {Object.keys(shown.properties).length > 0 && (
        <ChecklistForm
          key={key}
          document={shown}
          particulars={particulars}
          keepPhoto={noPhoto}
          photoUrl={noUrl}
          singleKeys={false}
          frame={({ page, dock }) => (
            <FramedPage label={d("trial.title")} dock={dock}>
              <TitleBlock title={shown.title} size="fill" level={2} />
              {page}
            </FramedPage>
          )}
        />
      )}
    </>
  );
};
