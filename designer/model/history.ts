/** A value with what it was before and what was undone. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** Changes with the same tag in a row are one step: a word typed is undone as a word. */
  readonly tag: string | null;
}

const STEPS_KEPT = 500;

export const begin = <T>(present: T): History<T> => ({
  past: [],
  present,
  future: [],
  tag: null,
});

/** The same value again is no step. */
export const change = <T>(history: History<T>, next: T, tag: string | null = null): History<T> => {
  if (next === history.present) return history;
  const joins = tag !== null && tag === history.tag;
  return {
    past: joins ? history.past : [...history.past, history.present].slice(-STEPS_KEPT),
    present: next,
    future: [],
    tag,
  };
};

export const undo = <T>(history: History<T>): History<T> => {
  const previous = history.past.at(-1);
  if (previous === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: previous,
    future: [history.present, ...history.future],
    tag: null,
  };
};

export const redo = <T>(history: History<T>): History<T> => {
  const [next, ...rest] = history.future;
  if (next === undefined) return history;
  return {
    past: [...history.past, history.present],
    present: next,
    future: rest,
    tag: null,
  };
};
