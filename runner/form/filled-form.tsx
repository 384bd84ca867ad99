import type { Judge, Judgement } from "@roundbook/schemas";
import { useCallback, useMemo, useState } from "react";
import { CautionsView } from "./cautions-view.tsx";
import { FIELD_KINDS } from "./fields/registry.ts";
import { FinishDock, FinishView } from "./finish-view.tsx";
import { onFormKey } from "./form-keys.ts";
import type { ChecklistFormProps } from "./form-props.ts";
import { Button, Buttons } from "./look/button.tsx";
import { useMessages } from "./messages/messages.tsx";
import type { Filled } from "./model/filled.ts";
import { sectionsOf } from "./model/sections.ts";
import { fieldProps, SectionView } from "./section-view.tsx";
import { useFilling } from "./use-filling.ts";
import { useOpened } from "./use-opened.ts";
import { type Place, useSteps } from "./use-steps.ts";

const NOTHING = {};
const NONE: readonly string[] = [];

export function FilledForm(props: ChecklistFormProps & { readonly judge: Judge }) {
  const { document, judge, particulars, keepPhoto, photoUrl } = props;
  const { previous = NOTHING, openDefects = NOTHING, cautionsRead = false } = props;
  const { t } = useMessages();
  const photos = useMemo(() => ({ keepPhoto, photoUrl }), [keepPhoto, photoUrl]);
  const [initial] = useState<Filled>(() => ({
    answers: props.initialAnswers ?? NOTHING,
    evidence: props.initialEvidence ?? NOTHING,
    declared: props.initialDeclared ?? NONE,
  }));
  const filling = useFilling(document, initial, props.onAnswersChange);
  const { answers, evidence } = filling.filled;
  const judgement = useMemo<Judgement>(
    () => judge.judge({ particulars, answers, evidence }),
    [judge, particulars, answers, evidence],
  );
  const all = useMemo(() => sectionsOf(document, t("form.points")), [document, t]);
  const cautions = document.cautions ?? NONE;
  const [read, setRead] = useState(cautionsRead || cautions.length === 0);
  const steps = useSteps(all, judgement, answers, !read);
  const { place, section, ahead, back } = steps;
  const opened = useOpened({
    place,
    section,
    judge,
    judgement,
    particulars,
    filled: filling.filled,
  });

  const [followed, setFollowed] = useState<string>();
  if (props.at !== followed) {
    setFollowed(props.at);
    if (props.at !== undefined) steps.goToPoint(props.at);
  }

  const go = (to: Place) => steps.go(to);
  const next = () => {
    if (ahead === undefined) return;
    if (place.at === "cautions") {
      setRead(true);
      props.onCautionsRead?.();
    }
    const kind = opened && FIELD_KINDS[opened.point.kind];
    if (opened && kind?.holds?.({ ...opened, answer: answers[opened.point.id] })) {
      opened.onDraft({ ...opened.draft, asked: true });
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
        {...{ section, judgement, filling, previous, openDefects, photos, opened, onOpen }}
        count={steps.sections.length}
        clock={props.clock}
      />
    );

  const label =
    place.at === "cautions"
      ? t("caution.begin")
      : ahead?.names
        ? t("form.next-to", { to: ahead.names })
        : t("form.to-finish");
  const Dock = opened && FIELD_KINDS[opened.point.kind].Dock;
  const dock =
    place.at === "finish" ? (
      <FinishDock {...props} {...{ filling, judgement, back }} onBack={go} />
    ) : opened && Dock ? (
      <Dock
        {...fieldProps({ opened, filling, judgement, previous, photos })}
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
