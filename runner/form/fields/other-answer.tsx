import { isAbsent } from "@roundbook/schemas";
import { WordButton } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import type { FieldProps } from "./field.ts";

/** "Other…": the way to the reasons for giving no answer. */
export function OtherAnswer({ answer, onAbsent }: Pick<FieldProps, "answer" | "onAbsent">) {
  const { t } = useMessages();
  return (
    <WordButton aria-pressed={isAbsent(answer)} onClick={onAbsent}>
      {t("answer.other")}
    </WordButton>
  );
}
