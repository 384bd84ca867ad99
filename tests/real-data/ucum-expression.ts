import type { Essence } from "./ucum-files.ts";

/** So many of a product of base units, by their exponents. */
export interface Quantity {
  readonly factor: number;
  readonly exponents: ReadonlyMap<string, number>;
}

const ONE: Quantity = { factor: 1, exponents: new Map() };

export const times = (a: Quantity, b: Quantity, sign: 1 | -1): Quantity => {
  const exponents = new Map(a.exponents);
  for (const [base, exponent] of b.exponents) {
    const sum = (exponents.get(base) ?? 0) + sign * exponent;
    if (sum === 0) exponents.delete(base);
    else exponents.set(base, sum);
  }
  return { factor: sign === 1 ? a.factor * b.factor : a.factor / b.factor, exponents };
};

const power = (of: Quantity, exponent: number): Quantity => ({
  factor: of.factor ** exponent,
  exponents: new Map([...of.exponents].map(([base, one]) => [base, one * exponent])),
});

/**
 * Reads unit expressions by the grammar of UCUM §2 and brings them down to its seven base units by
 * the definitions of `ucum-essence.xml` alone. Of a special unit it gives the unit of its scale: K
 * of Cel, 5 K/9 of [degF].
 */
export class ExpressionReader {
  readonly #essence: Essence;
  readonly #known = new Map<string, Quantity | null>();

  constructor(essence: Essence) {
    this.#essence = essence;
  }

  /** Null when an atom is unknown or the text is no unit expression. */
  read(text: string): Quantity | null {
    const annotated = text.replaceAll(/\{[!-z|~]*\}/g, "") || "1";
    const tokens = annotated.match(/\(|\)|\.|\/|(?:\[[^\]]*\]|[^()./[\]])+/g) ?? [];
    const [quantity, rest] = this.#term(tokens);
    return rest.length === 0 ? quantity : null;
  }

  #term(tokens: readonly string[]): [Quantity | null, readonly string[]] {
    let rest = tokens[0] === "/" ? tokens : [".", ...tokens];
    let quantity: Quantity | null = ONE;
    while (quantity && (rest[0] === "." || rest[0] === "/")) {
      const sign: 1 | -1 = rest[0] === "." ? 1 : -1;
      const [part, after]: [Quantity | null, readonly string[]] = this.#component(rest.slice(1));
      quantity = part && times(quantity, part, sign);
      rest = after;
    }
    return [quantity, rest];
  }

  #component(tokens: readonly string[]): [Quantity | null, readonly string[]] {
    const [head = "", ...rest] = tokens;
    if (head !== "(") return [this.#simple(head), rest];
    const [inner, after] = this.#term(rest);
    return [after[0] === ")" ? inner : null, after.slice(1)];
  }

  #simple(text: string): Quantity | null {
    if (/^\d+$/.test(text)) return { ...ONE, factor: Number(text) };
    const [, atom = "", exponent] =
      /^(10\*|10\^|.*?[^\d+-])([+-]?\d+)?$/.exec(text) ?? ([] as string[]);
    const unit = this.#atom(atom);
    return unit && exponent !== undefined ? power(unit, Number(exponent)) : unit;
  }

  #atom(code: string): Quantity | null {
    const known = this.#known.get(code);
    if (known !== undefined) return known;
    const { units, prefixes } = this.#essence;
    let quantity: Quantity | null = null;
    const whole = units.get(code);
    if (whole?.isBase) quantity = { factor: 1, exponents: new Map([[code, 1]]) };
    else if (whole) {
      const of = this.read(whole.of);
      quantity = of && { ...of, factor: of.factor * whole.value };
    } else
      for (const [prefix, factor] of prefixes) {
        const metric = code.startsWith(prefix) ? units.get(code.slice(prefix.length)) : undefined;
        const of = metric?.isMetric ? this.#atom(metric.code) : null;
        if (of) quantity = { ...of, factor: of.factor * factor };
      }
    this.#known.set(code, quantity);
    return quantity;
  }
}
