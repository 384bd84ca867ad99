import { worded } from "@roundbook/schemas";
import { useMemo } from "react";
import { FilledForm } from "./filled-form.tsx";
import type { ChecklistFormProps } from "./form-props.ts";
import { Loading } from "./look/empty.tsx";
import { LeafWords } from "./look/margin-block.tsx";
import { useMessages } from "./messages/messages.tsx";
import { ChecklistTitles } from "./messages/titled.tsx";
import { type JudgeState, useJudge } from "./use-judge.ts";

/** Checklist in, answers out. Until its limits can be judged nothing is asked. */
export function ChecklistForm(props: ChecklistFormProps) {
  const { t } = useMessages();
  const judged = useJudge(props.document);
  switch (judged.state) {
    case "loading":
      return props.frame({ page: <Loading label={t("form.loading")} />, dock: undefined });
    case "failed":
      return props.frame({
        page: (
          <LeafWords>
            <p role="alert">{t("form.no-engine")}</p>
          </LeafWords>
        ),
        dock: undefined,
      });
    case "ready":
      return <Ready {...props} judge={judged.judge} patterns={judged.patterns} />;
  }
}

type ReadyProps = ChecklistFormProps &
  Pick<JudgeState & { readonly state: "ready" }, "judge" | "patterns">;

const Ready = (props: ReadyProps) => {
  const { document: data, language } = props;
  const document = useMemo(
    () => (language === undefined ? data : worded(data, language)),
    [data, language],
  );
  return (
    <ChecklistTitles value={document}>
      <FilledForm {...props} document={document} data={data} />
    </ChecklistTitles>
  );
};
