/** Longest pause between two keys of a scanner, in ms; a hand is slower than this. */
const LONGEST_PAUSE = 50;
/** Two fast keys may be a slip of the hand. */
const FEWEST_KEYS = 3;

export interface WedgeKey {
  readonly key: string;
  /** Held with Ctrl, Alt or Meta: a shortcut, never part of a code. */
  readonly shortcut: boolean;
  /** Something that takes text has the focus: its keys stay its own. */
  readonly inField: boolean;
}

/**
 * Tells the key burst of a scanner, ending in Enter, from a hand at the keyboard.
 * `now` is in ms. Each key gives the code that it ends, or undefined.
 */
export const createWedge = (now: () => number): ((pressed: WedgeKey) => string | undefined) => {
  let burst = "";
  let last = Number.NEGATIVE_INFINITY;
  return ({ key, shortcut, inField }) => {
    // A scanner sends Shift on its own before a capital.
    if (key === "Shift") return undefined;
    const at = now();
    const pause = at - last;
    last = at;
    // A clock that was set back tells nothing about the hand.
    if (inField || shortcut || pause < 0 || pause > LONGEST_PAUSE) burst = "";
    if (inField || shortcut) return undefined;
    if (key === "Enter") {
      const code = burst;
      burst = "";
      return code.length >= FEWEST_KEYS ? code.trim() || undefined : undefined;
    }
    burst = [...key].length === 1 ? burst + key : "";
    return undefined;
  };
};
