import { lineBox } from "./limit-scale.ts";

export interface LabelWish {
  readonly text: string;
  /** The mark it belongs to. */
  readonly x: number;
  /** The side it prefers: before (anchored at its end) or after the mark. */
  readonly side: "before" | "after";
  readonly strong: boolean;
}

export interface PlacedLabel extends LabelWish {
  readonly left: number;
  readonly width: number;
  /** 0 is the line next to the axis, 1 the one above it. */
  readonly line: number;
}

/** A generous estimate at 14 px, so that labels that pass here never touch in print. */
export function labelWidth({ text, strong }: LabelWish) {
  return text.length * (strong ? 7.9 : 7.5);
}

/** Places every label beside its mark, within the drawing and clear of the others. */
export function placeLabels(wishes: readonly LabelWish[]): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const wish of wishes) {
    for (let line = 0; ; line += 1) {
      const left = lefts(wish).find((candidate) => isClear(candidate, wish, line, placed));
      if (left === undefined) continue;
      placed.push({ ...wish, left, width: labelWidth(wish), line });
      break;
    }
  }
  return placed;
}

function lefts(wish: LabelWish) {
  const width = labelWidth(wish);
  const before = wish.x + 3 - width;
  const after = wish.x - 3;
  const tries = wish.side === "before" ? [before, after] : [after, before];
  const inside = Math.min(Math.max(wish.x - width / 2, 0), lineBox.width - width);
  return [...tries.filter((left) => left >= 0 && left + width <= lineBox.width + 4), inside];
}

function isClear(left: number, wish: LabelWish, line: number, placed: readonly PlacedLabel[]) {
  const right = left + labelWidth(wish);
  return placed.every(
    (other) =>
      other.line !== line || right + 8 <= other.left || left >= other.left + other.width + 8,
  );
}

/** Where print begins or ends: a label keeps to the end next to its mark, whatever its true width. */
export function anchorOf({ left, width, x }: PlacedLabel) {
  if (left >= x - 3.01) return { x: left, textAnchor: "start" } as const;
  if (left + width <= x + 3.01) return { x: left + width, textAnchor: "end" } as const;
  return { x: left + width / 2, textAnchor: "middle" } as const;
}
