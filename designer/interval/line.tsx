import { durationWords, Sentence, useMessages } from "@roundbook/runner/form";
import type { Problem, ProblemParam } from "@roundbook/schemas";
import type { ReactNode } from "react";
import { TextEdit, useOpened } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { readLength, readMargin } from "../model/interval-length.ts";
import { type LineName, lineOf } from "../model/interval-lines.ts";
import { useInterval, useParticulars } from "./interval-desk.tsx";

/** One sentence of the interval, what opens under it, and what is wrong with it. */
export const Line = ({
  name,
  verb,
  editors,
  children,
}: {
  readonly name: LineName;
  readonly verb: string;
  readonly editors: Readonly<Record<string, () => ReactNode>>;
  readonly children: ReactNode;
}) => {
  const { problems } = useInterval();
  const opened = useOpened(editors);
  const here = problems.filter(({ pointer }) => lineOf(pointer) === name);
  return (
    <Sentence verb={verb} opened={opened}>
      {children}
      {here.map((problem) => (
        <ProblemLine key={`${problem.pointer} ${problem.code}`} problem={problem} />
      ))}
    </Sentence>
  );
};

/** `asset.use` and `use` as the manager calls them. */
const useTitledParams = ({ params }: Problem): Problem["params"] => {
  const particulars = useParticulars();
  const titleOf = (name: string) => particulars[name]?.title ?? name;
  const words = (value: ProblemParam): ProblemParam => {
    if (typeof value === "string")
      return value.replace(/\basset\.([a-z][a-z0-9_]*)/g, (_, name: string) => titleOf(name));
    return Array.isArray(value) ? value.map((one) => words(one) as string) : value;
  };
  const told = Object.entries(params).map(([key, value]) => [
    key,
    key === "name" && typeof value === "string" ? titleOf(value) : words(value),
  ]);
  return Object.fromEntries(told);
};

const ProblemLine = ({ problem }: { readonly problem: Problem }) => {
  const { say } = useMessages();
  const { draft } = useInterval();
  const params = useTitledParams(problem);
  const { start, end } = problem.params;
  const text = draft.rule.kind === "recurrence" ? draft.rule.rrule : "";
  const spanned = typeof start === "number" && typeof end === "number" && text !== "";
  return (
    <p className="danger line-problem">
      {say({ code: problem.code, params })}
      {spanned && (
        <span className="mono line-span">
          {text.slice(0, start)}
          <span className="formula-wrong">{text.slice(start, end) || "\u00a0"}</span>
          {text.slice(end)}
        </span>
      )}
    </p>
  );
};

/** A length of time that has to be there. */
export const LengthEdit = ({
  label,
  value,
  onTake,
}: {
  readonly label: string;
  readonly value: string;
  readonly onTake: (iso: string) => void;
}) => {
  const { t } = useMessages();
  return (
    <TextEdit
      label={label}
      value={durationWords(t, value)}
      onTake={(text) => {
        const read = readLength(text);
        if (read === undefined) return iv("w.length");
        onTake(read);
        return undefined;
      }}
    />
  );
};

/** A length of time that may be none. */
export const MarginEdit = ({
  label,
  value,
  onTake,
}: {
  readonly label: string;
  readonly value: string | undefined;
  readonly onTake: (iso: string | undefined) => void;
}) => {
  const { t } = useMessages();
  return (
    <TextEdit
      label={label}
      value={value === undefined ? "" : durationWords(t, value)}
      onTake={(text) => {
        const read = readMargin(text);
        if (read === null) return iv("w.margin");
        onTake(read);
        return undefined;
      }}
    />
  );
};
