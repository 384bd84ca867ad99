export const ARITHMETIC = ["+", "-", "*", "/"] as const;
export const ORDERINGS = ["<", "<=", ">", ">="] as const;
export const FUNCTIONS = ["min", "max", "abs", "round"] as const;

export type Arithmetic = (typeof ARITHMETIC)[number];
export type Ordering = (typeof ORDERINGS)[number];
export type Equality = "==" | "!=";
export type FunctionName = (typeof FUNCTIONS)[number];

/** Where a node stands in the text, in UTF-16 offsets. */
export interface Place {
  readonly start: number;
  readonly end: number;
}

/** All the profile can say; whatever else CEL has never becomes a node. */
export type Node = Place &
  (
    | { readonly kind: "literal"; readonly value: number | string | boolean }
    | { readonly kind: "name"; readonly name: string }
    | { readonly kind: "negate" | "not"; readonly operand: Node }
    | {
        readonly kind: "arithmetic";
        readonly op: Arithmetic;
        readonly left: Node;
        readonly right: Node;
      }
    | {
        readonly kind: "ordering";
        readonly op: Ordering;
        readonly left: Node;
        readonly right: Node;
      }
    | {
        readonly kind: "equality";
        readonly op: Equality;
        readonly left: Node;
        readonly right: Node;
      }
    | { readonly kind: "and" | "or"; readonly left: Node; readonly right: Node }
    | { readonly kind: "choose"; readonly test: Node; readonly yes: Node; readonly no: Node }
    | { readonly kind: "in"; readonly left: Node; readonly list: readonly Node[] }
    | { readonly kind: "call"; readonly name: FunctionName; readonly args: readonly Node[] }
  );

export const MAX_FORMULA_LENGTH = 500;
export const MAX_FORMULA_NODES = 200;
export const MAX_FORMULA_DEPTH = 24;
