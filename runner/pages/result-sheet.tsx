import {
  type BodyOf,
  type Checklist,
  CIVIL_DATE,
  type HistoryEntry,
  splitAnswerName,
} from "@roundbook/schemas";
import { useState } from "react";
import { useForm } from "react-hook-form";
import {
  AreaField,
  Button,
  Buttons,
  LeafWords,
  LineField,
  parseReading,
  printUnit,
  Sheet,
  titleOf,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { Commitments } from "../offline/make-entry.ts";
import { useWrite } from "./use-write.ts";

export interface ResultSheetProps {
  readonly row: HistoryEntry;
  readonly document: Checklist;
  /** Name of the answer that holds the sample. */
  readonly point: string;
  readonly zone: string;
  onClose(): void;
}

/** Writes what the laboratory found as an entry of its own: the sealed inspection stays as it is. */
export const ResultSheet = ({ row, document, point, zone, onClose }: ResultSheetProps) => {
  const write = useWrite();
  const [written, setWritten] = useState(false);
  const form = useForm({ defaultValues: { figure: "", reportedOn: "", note: "" } });
  const { errors, isSubmitting } = form.formState;
  const unit = document.properties[splitAnswerName(point).point]?.quantity?.unit ?? "1";
  const submit = form.handleSubmit(async ({ figure, reportedOn, note }) => {
    const reading = parseReading(figure);
    const { asset } = row.entry;
    if (reading === undefined || asset === null) return;
    const commitments = new Commitments();
    const body: BodyOf<"result-received"> = {
      of: row.entry.id,
      point,
      result: { ...reading, unit },
      ...(reportedOn === "" ? {} : { reportedOn }),
      ...(note.trim() === "" ? {} : { note: await commitments.of(note.trim()) }),
    };
    await write({
      made: { kind: "result-received", body },
      asset,
      contents: commitments.contents,
      zone,
      summary: {
        number: row.about?.number ?? "",
        description: row.about?.description ?? "",
        words: book("entry.result-received"),
        overall: null,
      },
    });
    setWritten(true);
  });
  return (
    <Sheet
      number=""
      title={book("result.write")}
      second={titleOf(document, `answers.${point}`)}
      close={book("result.close")}
      onClose={onClose}
    >
      {written ? (
        <LeafWords>
          <p role="status">{book("result.written")}</p>
        </LeafWords>
      ) : (
        <form onSubmit={submit} noValidate>
          <LeafWords>
            <LineField
              label={
                printUnit(unit) === ""
                  ? book("result.figure-plain")
                  : book("result.figure", { unit: printUnit(unit) })
              }
              autoComplete="off"
              error={errors.figure && book("result.needs")}
              {...form.register("figure", {
                validate: (figure) => parseReading(figure) !== undefined,
              })}
            />
            <LineField
              label={book("result.day")}
              type="date"
              error={errors.reportedOn && book("add.needs", { what: book("result.day") })}
              {...form.register("reportedOn", {
                validate: (day) => day === "" || new RegExp(CIVIL_DATE).test(day),
              })}
            />
            <AreaField label={book("result.note")} maxLength={4000} {...form.register("note")} />
          </LeafWords>
          <Buttons>
            <Button kind="primary" type="submit" disabled={isSubmitting}>
              {book("result.write")}
            </Button>
          </Buttons>
        </form>
      )}
    </Sheet>
  );
};
