import type { Judgement } from "@roundbook/schemas";
import { useState } from "react";
import { FinishDefects } from "./finish-defects.tsx";
import { FinishLacks } from "./finish-lacks.tsx";
import { FinishPending } from "./finish-pending.tsx";
import type { ChecklistFormProps } from "./form-props.ts";
import { Button, Buttons } from "./look/button.tsx";
import { LeafWords } from "./look/margin-block.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { WordButton, WordList } from "./look/word.tsx";
import { useMessages } from "./messages/messages.tsx";
import { hindrance } from "./model/lacking.ts";
import type { Section } from "./model/sections.ts";
import { OverallLine } from "./overall-line.tsx";
import { Scores } from "./scores.tsx";
import type { Filling } from "./use-filling.ts";
import type { Place, Steps } from "./use-steps.ts";

export interface FinishProps extends ChecklistFormProps {
  readonly filling: Filling;
  readonly judgement: Judgement;
}

interface DockProps extends FinishProps {
  /** As it was judged, in the document's own words: this is what is kept. */
  readonly judged: Judgement;
  readonly back: Place | undefined;
  onBack(to: Place): void;
}

/** Everything before it is written: verdict, what is lacking, defects, what is due next. */
export function FinishView(
  props: FinishProps & { readonly steps: Steps; readonly sections: readonly Section[] },
) {
  const { document, issue, judgement, filling, steps, sections, openDefects = {} } = props;
  const { t } = useMessages();
  const next = props.nextDue?.(judgement);
  return (
    <>
      <OverallLine document={document} issue={issue} judgement={judgement} />
      <FinishLacks {...{ document, judgement, filling, sections }} onGo={steps.goToPoint} />
      <FinishPending {...{ judgement, sections, filling }} onGo={steps.goToPoint} />
      <Scores document={document} judgement={judgement} />
      <FinishDefects {...{ judgement, sections, filling, openDefects }} onGo={steps.goToPoint} />
      {next !== undefined && (
        <>
          <PlaceHeading title={t("finish.next-due")} />
          {next}
        </>
      )}
      {props.signature}
    </>
  );
}

/** *Back* and the button that writes the inspection, with the reason where it may not be pressed. */
export function FinishDock(props: DockProps) {
  const { document, judgement, judged, filling, back, onBack, onFinish } = props;
  const { t } = useMessages();
  const [without, setWithout] = useState(false);
  const [writing, setWriting] = useState(false);
  const stop = hindrance(document, judgement, filling.filled.answers, without);

  const finish = async () => {
    if (stop !== undefined || onFinish === undefined || writing) return;
    setWriting(true);
    try {
      await filling.submit((filled) => onFinish({ ...filled, judgement: judged }));
    } finally {
      setWriting(false);
    }
  };
  const reason = onFinish === undefined ? t("finish.trial") : stop && t(`finish.${stop}`);
  return (
    <>
      {(reason !== undefined || !judgement.complete) && (
        <LeafWords>
          <p className="dock-reason" id="finish-reason">
            {reason ?? t("finish.incomplete")}
          </p>
          {stop === "evidence" && (
            <WordList>
              <WordButton onClick={() => setWithout(true)}>{t("finish.without")}</WordButton>
            </WordList>
          )}
        </LeafWords>
      )}
      <Buttons>
        {back && <Button onClick={() => onBack(back)}>{t("form.back")}</Button>}
        {onFinish && (
          <Button
            kind="primary"
            disabled={stop !== undefined || writing}
            aria-describedby={stop === undefined ? undefined : "finish-reason"}
            onClick={finish}
          >
            {t("finish.write")}
          </Button>
        )}
      </Buttons>
    </>
  );
}
