/** The one door of the form and the look; its style sheet is `@roundbook/runner/form.css`. */
export { BlankSheet, type BlankSheetProps } from "./blank-sheet.tsx";
export { ChecklistForm } from "./checklist-form.tsx";
export type { Draft, FieldKind, FieldProps, LastReading, PhotoDoor } from "./fields/field.ts";
export { Photos as PaperPhotos } from "./fields/photos.tsx";
export { FIELD_KINDS } from "./fields/registry.ts";
export type { ChecklistFormProps, FinishedFilling, FormParts } from "./form-props.ts";
export { InspectionView, type InspectionViewProps } from "./inspection-view.tsx";
export { loadPatterns } from "./load-patterns.ts";
export * from "./look/answer-strip.tsx";
export * from "./look/button.tsx";
export * from "./look/choice-list.tsx";
export * from "./look/classes.ts";
export * from "./look/contents.tsx";
export * from "./look/defect-steps.tsx";
export * from "./look/dock.tsx";
export * from "./look/due.tsx";
export * from "./look/due-mark.tsx";
export * from "./look/due-state.ts";
export * from "./look/empty.tsx";
export * from "./look/entry.tsx";
export * from "./look/field-frame.tsx";
export * from "./look/folded-row.tsx";
export * from "./look/follow.ts";
export * from "./look/limit-line.tsx";
export * from "./look/limit-scale.ts";
export * from "./look/line-field.tsx";
export * from "./look/margin-block.tsx";
export * from "./look/pad.tsx";
export * from "./look/pad-feet.tsx";
export * from "./look/page.tsx";
export * from "./look/place-heading.tsx";
export * from "./look/plot.tsx";
export * from "./look/point.tsx";
export * from "./look/print-unit.ts";
export * from "./look/problems.tsx";
export * from "./look/quantities.tsx";
export * from "./look/reading-box.tsx";
export * from "./look/row.tsx";
export * from "./look/scan-line.tsx";
export * from "./look/sending-mark.tsx";
export * from "./look/sentence-panel.tsx";
export * from "./look/sheet.tsx";
export * from "./look/state-line.tsx";
export * from "./look/timer.tsx";
export * from "./look/title-block.tsx";
export * from "./look/use-wide.ts";
export * from "./look/verdict.tsx";
export * from "./look/walk.tsx";
export * from "./look/word.tsx";
export { MONTHS, WEEKDAYS } from "./messages/calendar.ts";
export * from "./messages/dates.ts";
export { deskEnglish } from "./messages/desk.ts";
export { durationWords } from "./messages/duration-words.ts";
export { ENGLISH, type MessageCode } from "./messages/en.ts";
export {
  english,
  type Messages,
  MessagesProvider,
  messagesOf,
  useMessages,
} from "./messages/messages.tsx";
export {
  type OnDay,
  onDayWords,
  ordinal,
  type RruleForm,
  rruleForm,
  rruleText,
  rruleWords,
} from "./messages/rrule-words.ts";
export { ChecklistTitles, titleOf, useTitled, withTitles } from "./messages/titled.tsx";
export { verdictWords } from "./messages/verdict-words.ts";
export { whyWords } from "./messages/why-words.ts";
export { type Words, wordsOf } from "./messages/words-of.ts";
export { type Contents as WrittenContents, writtenWords } from "./model/answer-words.ts";
export type { Filled, Wait } from "./model/filled.ts";
export { parseReading } from "./model/reading-text.ts";
export { pendingOf, reservationsOf, tallyOf } from "./model/tally.ts";
export { type JudgeState, useJudge } from "./use-judge.ts";
