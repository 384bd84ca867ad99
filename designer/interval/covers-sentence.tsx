import { useMessages } from "@roundbook/runner/form";
import { OpenBlank } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { coverable, coveredBy, setCovered } from "../model/interval-covers.ts";
import { useChecklist, useInterval } from "./interval-desk.tsx";
import { Line } from "./line.tsx";

/** "covers Ladder, monthly look; is covered by Ladder, formal inspection". */
export const CoversSentence = () => {
  const { say } = useMessages();
  const { draft, id, apply, intervals, checklists, problems } = useInterval();
  const points = useChecklist(draft.checklist)?.document.properties ?? {};
  const sound = !problems.some(({ pointer }) => pointer.startsWith("/rule"));
  const others = coverable(draft, id, intervals, checklists, sound);
  const chosen = others.filter(({ covered }) => covered).map(({ row }) => row.definition.title);
  const by = coveredBy(id, intervals);
  const titled = (params: Readonly<Record<string, unknown>>, checklist: string) => {
    const asked = checklists.find((one) => one.id === checklist)?.document.properties ?? points;
    const names = Array.isArray(params.points) ? params.points.map(String) : [];
    return { ...params, points: names.map((name) => `“${asked[name]?.title ?? name}”`) };
  };
  return (
    <Line
      name="covers"
      verb={iv("verb.covers")}
      editors={{
        covers: () =>
          others.length === 0 ? (
            <p className="second">{iv("l.covers-none")}</p>
          ) : (
            <fieldset className="cover-choices">
              <legend className="second">{iv("l.covers")}</legend>
              {others.map(({ row, covered, why }) => (
                <label key={row.id} className="desk-tick">
                  <input
                    type="checkbox"
                    checked={covered}
                    disabled={why.length > 0 && !covered}
                    onChange={(event) => apply(setCovered(draft, row.id, event.target.checked))}
                  />
                  <span>
                    {row.definition.title}
                    {why.map(({ code, params }) => (
                      <span key={code} className="second cover-why">
                        {say({
                          code,
                          params: titled(params, row.definition.checklist),
                        })}
                      </span>
                    ))}
                  </span>
                </label>
              ))}
            </fieldset>
          ),
      }}
    >
      <OpenBlank id="covers">{chosen.length === 0 ? iv("s.nothing") : chosen.join(", ")}</OpenBlank>
      {by.length > 0 && `; ${iv("s.covered-by", { titles: by.join(", ") })}`}
    </Line>
  );
};
