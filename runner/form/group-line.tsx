import { LeafWords } from "./look/margin-block.tsx";
import { GroupAnswer } from "./look/point.tsx";
import { WordButton, WordList } from "./look/word.tsx";
import { useMessages } from "./messages/messages.tsx";

export interface GroupLineProps {
  /** Points a declaration would answer now. */
  readonly declarable: readonly string[];
  /** Points that stand answered by it. */
  readonly declared: readonly string[];
  /** Wall time of the declaration, when it was made in this sitting. */
  readonly time: string | undefined;
  onDeclare(): void;
  onUndo(): void;
}

/** "All visual points satisfactory": one declaration for the checks of a group, never for a reading. */
export function GroupLine({ declarable, declared, time, onDeclare, onUndo }: GroupLineProps) {
  const { t } = useMessages();
  if (declared.length > 0) {
    const count = declared.length;
    return (
      <GroupAnswer
        says={t("group.declare")}
        action={<WordButton onClick={onUndo}>{t("form.undo")}</WordButton>}
      >
        {time === undefined
          ? t("group.declared", { count })
          : t("group.declared-at", { count, time })}
      </GroupAnswer>
    );
  }
  if (declarable.length === 0) return null;
  return (
    <div className="group-offer">
      <LeafWords>
        <WordList>
          <WordButton onClick={onDeclare}>{t("group.declare")}</WordButton>
        </WordList>
        <p className="second">{t("group.about", { count: declarable.length })}</p>
      </LeafWords>
    </div>
  );
}
