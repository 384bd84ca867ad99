import {
  LeafWords,
  PlaceHeading,
  printNumber,
  Row,
  Rows,
  useMessages,
} from "@roundbook/runner/form";
import type { ImportReport } from "@roundbook/schemas";
import { useEffect, useRef } from "react";
import { es } from "../messages/estate.ts";

/** The server tells no more of them. */
const MOST_FAULTS = 1000;

/** What an import did, or would do: counts, and every fault with its line and column. */
export const ImportResult = ({ report }: { readonly report: ImportReport }) => {
  const { say } = useMessages();
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    ref.current?.scrollIntoView({ block: "start" });
  }, []);
  return (
    <section aria-live="polite" ref={ref}>
      <PlaceHeading title={es(report.trial ? "import.trial-done" : "import.run-done")} />
      <LeafWords>
        <p>
          <strong>
            {es("import.counts", {
              rows: report.rows,
              entries: report.newEntries,
              assets: report.newAssets,
              already: report.already,
              bad: report.badRows,
            })}
          </strong>
        </p>
        <p className="second">
          {es(report.badRows > 0 ? "import.again" : "import.no-faults")}{" "}
          {es("import.again-adds-nothing")}
        </p>
      </LeafWords>
      {report.problems.length > 0 && (
        <>
          <PlaceHeading title={es("import.faults")} aside={printNumber(report.badRows)} />
          <Rows>
            {report.problems.map(({ row, column, problem }, at) => (
              <Row
                // A line may have one fault twice.
                key={at}
                number={row === 0 ? undefined : String(row)}
                name={say(problem)}
                second={[row === 0 ? es("import.file") : es("import.line", { row }), column]
                  .filter(Boolean)
                  .join(", ")}
              />
            ))}
          </Rows>
          {report.problems.length >= MOST_FAULTS && (
            <LeafWords>
              {es("import.more", { count: report.problems.length, bad: report.badRows })}
            </LeafWords>
          )}
        </>
      )}
    </section>
  );
};
