import { type BodyOf, CIVIL_DATE, type DefectRow } from "@roundbook/schemas";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { useLocation } from "wouter";
import {
  AreaField,
  Button,
  Buttons,
  ChoiceList,
  LeafWords,
  LineField,
  Sheet,
  WordLink,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { Commitments } from "../offline/make-entry.ts";
import { useWrite } from "./use-write.ts";

type Step = BodyOf<"defect-step">["step"];

/** What may follow: nothing is verified before it was repaired. */
const NEXT: Record<DefectRow["step"], readonly Step[]> = {
  raised: ["made-safe", "repaired", "deferred"],
  deferred: ["made-safe", "repaired", "deferred"],
  "made-safe": ["repaired", "deferred"],
  repaired: ["verified", "made-safe"],
  verified: [],
};

/** Writes the next step of a defect as an entry of its own. */
export const DefectSheet = ({
  defect,
  zone,
  onClose,
}: {
  readonly defect: DefectRow;
  readonly zone: string;
  readonly onClose: () => void;
}) => {
  const write = useWrite();
  const [, navigate] = useLocation();
  const [step, setStep] = useState<Step | null>(null);
  const [written, setWritten] = useState(false);
  const form = useForm({ defaultValues: { note: "", until: "" } });
  const submit = form.handleSubmit(async ({ note, until }) => {
    if (step === null) return;
    const commitments = new Commitments();
    const body: BodyOf<"defect-step"> = {
      defect: defect.id,
      step,
      note: await commitments.of(note),
      ...(step === "deferred" ? { until } : {}),
    };
    await write({
      made: { kind: "defect-step", body },
      asset: defect.asset,
      contents: commitments.contents,
      zone,
      summary: {
        number: defect.assetNumber,
        description: defect.assetDescription,
        words: book("entry.defect-step", { step: book(`defects.step-${step}`).toLowerCase() }),
        overall: null,
      },
    });
    setWritten(true);
  });
  return (
    <Sheet
      number={String(defect.number)}
      title={defect.title}
      second={`${defect.assetNumber} ${defect.assetDescription}`}
      close={book("defects.close")}
      onClose={onClose}
    >
      {written ? (
        <LeafWords>
          <p>{book("defects.written")}</p>
        </LeafWords>
      ) : (
        <form onSubmit={submit} noValidate>
          <ChoiceList
            label={book("defects.step")}
            choices={NEXT[defect.step].map((value) => ({
              value,
              label: book(`defects.step-${value}`),
            }))}
            chosen={step}
            onChoose={setStep}
          />
          <AreaField
            label={book("defects.note")}
            error={form.formState.errors.note && book("defects.needs-note")}
            {...form.register("note", { validate: (note) => note.trim() !== "" })}
          />
          {step === "deferred" && (
            <LineField
              label={book("defects.until")}
              type="date"
              error={
                form.formState.errors.until && book("add.needs", { what: book("defects.until") })
              }
              {...form.register("until", { pattern: new RegExp(CIVIL_DATE), required: true })}
            />
          )}
          <Buttons>
            <Button
              kind="primary"
              type="submit"
              disabled={step === null || form.formState.isSubmitting}
            >
              {book("defects.write")}
            </Button>
          </Buttons>
        </form>
      )}
      <LeafWords>
        <WordLink href={`/asset/${defect.asset}`} onFollow={navigate}>
          {book("defects.asset", { number: defect.assetNumber })}
        </WordLink>
      </LeafWords>
    </Sheet>
  );
};
