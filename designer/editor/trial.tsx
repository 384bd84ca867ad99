import { ChecklistForm, FacingHead, FramedPage, TitleBlock } from "@roundbook/runner/form";
import type { Particulars } from "@roundbook/schemas";
import { useDeferredValue, useMemo, useState } from "react";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { sampleParticulars } from "../model/sample.ts";
import { TrialParticulars } from "./trial-particulars.tsx";

const noPhoto = () => Promise.reject(new Error("a trial keeps no photo"));
const noUrl = async () => undefined;

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
  // A form remembers what it was given first: another document is another form.
  const key = useMemo(() => JSON.stringify([Object.keys(shown.properties), shown.groups]), [shown]);
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
        <ChecklistForm
          key={key}
          document={shown}
          issue={issue}
          particulars={particulars}
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
    </>
  );
};
