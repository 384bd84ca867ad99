import type { Checklist, Judge, JudgeInput, Judgement, PatternEngine } from "@roundbook/schemas";
import { useCallback, useMemo, useState } from "react";
import { CautionsView } from "./cautions-view.tsx";
import { FIELD_KINDS } from "./fields/registry.ts";
import { FinishDock, FinishView } from "./finish-view.tsx";
import { onFormKey } from "./form-keys.ts";
import type { ChecklistFormProps } from "./form-props.ts";
import { Button, Buttons } from "./look/button.tsx";
import { useMessages } from "./messages/messages.tsx";
import type { Filled } from "./model/filled.ts";
import { malformedOf } from "./model/malformed.ts";
import { withOperandReasons } from "./model/operand-reasons.ts";
import { readingsBefore } from "./model/readings-before.ts";
import { repeatsKey, sectionsOf } from "./model/sections.ts";
import { fieldProps, SectionView } from "./section-view.tsx";
import { useFilling } from "./use-filling.ts";
import { useOpened } from "./use-opened.ts";
import { type Place, useSteps } from "./use-steps.ts";
import { useSurroundings } from "./use-surroundings.ts";
import { useWorded } from "./use-worded.ts";

const NOTHING = {};
const NONE: readonly string[] = [];

export interface FilledFormProps extends ChecklistFormProps {
  readonly judge: Judge;
  readonly patterns: PatternEngine | undefined;
  /** The document as it is judged and kept; `document` is the same in the reader's language. */
  readonly data: Checklist;
}

export function FilledForm(props: FilledFormProps) {
  const { document, data, judge, patterns, particulars, keepPhoto, photoUrl } = props;
  const { previous = NOTHING, openDefects = NOTHING, cautionsRead = false } = props;
  const { t } = useMessages();
  const photos = useMemo(() => ({ keepPhoto, photoUrl }), [keepPhoto, photoUrl]);
  const [initial] = useState<Filled>(() => ({
    answers: props.initialAnswers ?? NOTHING,
    evidence: props.initialEvidence ?? NOTHING,
    declared: props.initialDeclared ?? NONE,
    waits: props.initialWaits ?? NOTHING,
  }));
  const before = useMemo(
    () => props.previousAnswers ?? readingsBefore(previous),
    [props.previousAnswers, previous],
  );
  const filling = useFilling(data, patterns, initial, props.onAnswersChange);
  const { answers, evidence } = filling.filled;
  const about = useSurroundings(props);
  const { on } = about;
  const input = useMemo<JudgeInput>(
    () => ({ particulars, answers, evidence, on, previous: before }),
    [particulars, answers, evidence, on, before],
  );
  const judged = useMemo<Judgement>(() => judge.judge(input), [judge, input]);
  const malformed = useMemo(
    () => malformedOf(data, answers, judged, patterns),
    [data, answers, judged, patterns],
  );
  const shown = useMemo<Judgement>(
    () => ({ ...judged, problems: [...judged.problems, ...malformed.values()] }),
    [judged, malformed],
  );
  const worded = useWorded(shown, data, document, props.language);
  const judgement = useMemo(() => withOperandReasons(worded, answers), [worded, answers]);
  const key = repeatsKey(judgement.repeats);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the repeats.
  const all = useMemo(
    () => sectionsOf(document, t("form.points"), judgement.repeats),
    [document, t, key],
  );
  const cautions = document.cautions ?? NONE;
  const [read, setRead] = useState(cautionsRead || cautions.length === 0);
  const steps = useSteps(all, judgement, filling.filled, !read);
  const { place, section, ahead, back } = steps;
  const opened = useOpened({
    place,
    section,
    judge,
    judgement,
    input,
  });

  const [followed, setFollowed] = useState<string>();
  if (props.at !== followed) {
    setFollowed(props.at);
    if (props.at !== undefined) steps.goToPoint(props.at);
  }

  const step = opened && FIELD_KINDS[opened.point.kind].step?.(opened);
  const go = (to: Place) => steps.go(to);
  const next = () => {
    if (ahead === undefined) return;
    if (place.at === "cautions") {
      setRead(true);
      props.onCautionsRead?.();
    }
    if (opened && step) {
      opened.onDraft(step.draft);
      const wait = filling.filled.waits[opened.point.id];
      // The clock of a wait runs on for the next reading.
      if (step.to !== undefined && wait?.readAt !== undefined)
        filling.setWait(opened.point.id, { startedAt: wait.startedAt });
      return;
    }
    go(ahead.to);
  };
  const open = steps.open;
  const onOpen = useStable(open);

  const check =
    opened?.point.kind === "check" && props.singleKeys !== false
      ? (answer: "ok" | "not-ok") => filling.setAnswer(opened.point.id, answer)
      : undefined;

  const page =
    place.at === "cautions" ? (
      <CautionsView cautions={cautions} />
    ) : place.at === "finish" || section === undefined ? (
      <FinishView {...props} {...{ filling, judgement, steps, sections: all }} />
    ) : (
      <SectionView
        {...{
          section,
          judgement,
          malformed,
          filling,
          previous,
          openDefects,
          photos,
          opened,
          about,
          onOpen,
        }}
        count={steps.sections.length}
        clock={props.clock}
      />
    );

  const label =
    place.at === "cautions"
      ? t("caution.begin")
      : step?.to !== undefined
        ? t("readings.next", { number: step.to })
        : ahead?.names
          ? t("form.next-to", { to: ahead.names })
          : t("form.to-finish");
  const Dock = opened && FIELD_KINDS[opened.point.kind].Dock;
  const dock =
    place.at === "finish" ? (
      <FinishDock {...props} {...{ filling, judgement, judged, back }} onBack={go} />
    ) : opened && Dock ? (
      <Dock
        {...fieldProps({ opened, filling, judgement, previous, photos, about })}
        ahead={{ label, go: next }}
        leftHanded={props.leftHanded ?? false}
      />
    ) : (
      <Buttons>
        {back && <Button onClick={() => go(back)}>{t("form.back")}</Button>}
        <Button kind="primary" onClick={next}>
          {label}
        </Button>
      </Buttons>
    );

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: shortcuts for what the buttons inside do.
    <div className="form-keys" onKeyDown={(event) => onFormKey(event, { next, check })}>
      {props.frame({ page, dock })}
    </div>
  );
}

/** One function for the whole life of the form, so that rows that did not change are not drawn again. */
function useStable<A>(latest: (argument: A) => void): (argument: A) => void {
  const [box] = useState(() => ({ latest }));
  box.latest = latest;
  return useCallback((argument: A) => box.latest(argument), [box]);
}
