import type { Answer, Checklist, EvidenceItem, PatternEngine } from "@roundbook/schemas";
import { useMemo } from "react";
import { useForm, useWatch } from "react-hook-form";
import { type Filled, type FilledValues, toFilled, type Wait } from "./model/filled.ts";
import { answersResolver } from "./resolver.ts";

export interface Filling {
  readonly filled: Filled;
  /** `undefined` clears. An answer of its own takes a point out of its group's declaration. */
  setAnswer(id: string, answer: Answer | undefined): void;
  setEvidence(id: string, items: readonly EvidenceItem[]): void;
  setWait(id: string, wait: Wait | undefined): void;
  declare(ids: readonly string[]): void;
  withdraw(ids: readonly string[]): void;
  /** Calls back when the answers fit the checklist. */
  submit(onValid: (filled: Filled) => void | Promise<void>): Promise<void>;
}

/** The answers of one form. Hidden points keep theirs: nothing is unregistered. */
export function useFilling(
  document: Checklist,
  patterns: PatternEngine | undefined,
  initial: Filled,
  onChange?: (filled: Filled) => void,
): Filling {
  const { control, getValues, setValue, handleSubmit } = useForm<FilledValues>({
    defaultValues: {
      answers: { ...initial.answers },
      evidence: { ...initial.evidence },
      declared: [...initial.declared],
      waits: { ...initial.waits },
    },
    resolver: answersResolver(document, patterns),
  });
  const values = useWatch({ control });
  const filled = useMemo(() => toFilled(values as Partial<FilledValues>), [values]);

  const changed = () => onChange?.(toFilled(getValues()));
  const setDeclared = (ids: readonly string[]) => setValue("declared", [...ids]);
  const setOne = (id: string, answer: Answer | undefined) => setValue(`answers.${id}`, answer);

  return {
    filled,
    setAnswer(id, answer) {
      setOne(id, answer);
      const { declared } = getValues();
      if (declared.includes(id)) setDeclared(declared.filter((one) => one !== id));
      changed();
    },
    setEvidence(id, items) {
      setValue(`evidence.${id}`, items.length > 0 ? items : undefined);
      changed();
    },
    setWait(id, wait) {
      setValue(`waits.${id}`, wait);
      changed();
    },
    declare(ids) {
      for (const id of ids) setOne(id, "ok");
      setDeclared([...getValues().declared, ...ids]);
      changed();
    },
    withdraw(ids) {
      for (const id of ids) setOne(id, undefined);
      setDeclared(getValues().declared.filter((one) => !ids.includes(one)));
      changed();
    },
    submit: (onValid) => handleSubmit((valid) => onValid(toFilled(valid)))(),
  };
}
