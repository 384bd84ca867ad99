import {
  ChecklistForm,
  FacingHead,
  type Filled,
  FramedPage,
  TitleBlock,
} from "@roundbook/runner/form";
import type { Particulars } from "@roundbook/schemas";
import { type ReactNode, useDeferredValue, useMemo, useRef, useState } from "react";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { sampleParticulars } from "../model/sample.ts";
import { fittingAnswers, NOTHING_TRIED, withAnswers } from "../model/trial-answers.ts";
import { TrialParticulars } from "./trial-particulars.tsx";

const noPhoto = () => Promise.reject(new Error("a trial keeps no photo"));
const noUrl = async () => undefined;

/** Begins with what was written before, as far as it is still asked for. */
const Begun = ({
  filled,
  children,
}: {
  readonly filled: () => Filled;
  children(first: Filled): ReactNode;
}) => {
  const [first] = useState(filled);
  return children(first);
};

/** The runner's own form, filled as a trial: it leaves no record. */
export const Trial = ({
  document,
  issue,
  at,
}: {
  readonly document: DraftDocument;
  /** The point under work: the trial stands at it. */
  readonly at?: string;
  readonly issue?: number;
}) => {
  const [written, setWritten] = useState<Particulars>({});
  const [read, setRead] = useState(false);
  const shown = useDeferredValue(document);
  const particulars = useMemo<Particulars>(() => {
    const sampled = { ...sampleParticulars(shown), ...written };
    return Object.fromEntries(
      Object.entries(sampled).filter(
        ([name, value]) => value !== "" && Object.hasOwn(shown.particulars ?? {}, name),
      ),
    );
  }, [shown, written]);
  const tried = useRef(NOTHING_TRIED);
  // A form remembers what it was given first: another document is another form, with the same answers.
  const key = useMemo(() => {
    const kinds = Object.entries(shown.properties).map(([name, { $ref }]) => [name, $ref]);
    return JSON.stringify([kinds, shown.groups]);
  }, [shown]);
  return (
    <>
      <FacingHead title={d("trial.title")} />
      <TrialParticulars
        document={shown}
        particulars={particulars}
        onWrite={(name, value) => setWritten((before) => ({ ...before, [name]: value }))}
      />
      {Object.keys(shown.properties).length === 0 ? (
        <p className="trial-empty">{e("ed.no-points")}</p>
      ) : (
        <Begun key={key} filled={() => fittingAnswers(shown, tried.current)}>
          {(first) => (
            <ChecklistForm
              document={shown}
              issue={issue}
              particulars={particulars}
              initialAnswers={first.answers}
              initialEvidence={first.evidence}
              initialDeclared={first.declared}
              initialWaits={first.waits}
              onAnswersChange={(filled) => {
                tried.current = withAnswers(shown, tried.current, filled);
              }}
              at={at}
              cautionsRead={read}
              onCautionsRead={() => setRead(true)}
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
        </Begun>
      )}
    </>
  );
};
