import type { Answers, Evidence, Particulars } from "../checklist/answer-types.ts";
import { particularProblem } from "../checklist/parse-particulars.ts";
import {
  type Failure,
  type FormulaContext,
  failure,
  type Scalar,
} from "../formulas/engine-type.ts";
import type { Names } from "./expression.ts";
import { type Given, own } from "./given.ts";
import type { Prepared, PreparedPoint } from "./prepared.ts";

export interface JudgeInput {
  readonly particulars: Particulars;
  readonly answers: Answers;
  readonly evidence?: Evidence;
  /** Answers of the inspection before; no rule of this dialect reads them yet. */
  readonly previous?: Answers;
}

type Bag = Record<string, Scalar | Failure | undefined>;
interface Context extends FormulaContext {
  readonly asset: Bag;
  readonly answers: Bag;
  readonly values: Bag;
}
const bag = (): Bag => Object.create(null) as Bag;

const scalar = (value: unknown): Scalar | undefined => {
  if (typeof value === "number") return Number.isFinite(value) ? value : undefined;
  return typeof value === "string" || typeof value === "boolean" ? value : undefined;
};

/**
 * One judging under way. Names are looked up when a formula first needs them and kept; a name
 * that leads back to itself meets a failure in its own place.
 */
export class Run implements Names {
  readonly #prepared: Prepared;
  readonly input: JudgeInput;
  #context: Context | undefined = undefined;
  #asked: Map<string, boolean | Failure> | undefined = undefined;

  constructor(prepared: Prepared, input: JudgeInput) {
    this.#prepared = prepared;
    this.input = input;
  }

  /** What formulas see; checklists without any never need one. */
  get context(): Context {
    this.#context ??= { asset: bag(), answers: bag(), values: bag() };
    return this.#context;
  }

  given(point: PreparedPoint): Given {
    return point.read(own(this.input.answers, point.id));
  }

  /** Whether a point is asked; a failure when its condition cannot be had. */
  asked(point: PreparedPoint): boolean | Failure {
    if (point.when === undefined) return true;
    this.#asked ??= new Map();
    const known = this.#asked.get(point.id);
    if (known !== undefined) return known;
    this.#asked.set(point.id, failure("cycle", { name: `answers.${point.id}` }));
    const outcome = point.when.evaluate(this);
    const asked =
      typeof outcome === "boolean" || typeof outcome === "object"
        ? outcome
        : failure("wrong-type", { name: point.when.source, expected: "boolean" });
    this.#asked.set(point.id, asked);
    return asked;
  }

  /** Puts what the names stand for into the context; undefined for what is not there. */
  need(names: readonly string[]): void {
    for (const name of names) {
      if (name.startsWith("asset.")) {
        const key = name.slice(6);
        this.context.asset[key] ??= this.#particular(key);
      } else if (name.startsWith("answers.")) {
        const key = name.slice(8);
        this.context.answers[key] ??= this.#answer(key);
      } else {
        this.value(name);
      }
    }
  }

  value(name: string): Scalar | Failure {
    const known = this.context.values[name];
    if (known !== undefined) return known;
    const value = this.#prepared.values.get(name);
    if (value === undefined) return failure("missing", { name });
    this.context.values[name] = failure("cycle", { name });
    const outcome = value.evaluate(this);
    this.context.values[name] = outcome;
    return outcome;
  }

  /** A class "i" where there are "I" and "II" is no class: taken as it stands it could hide a point. */
  #particular(key: string): Scalar | Failure | undefined {
    const value = scalar(own(this.input.particulars, key));
    const definition = this.#prepared.particulars.get(key);
    if (value === undefined || definition === undefined) return value;
    const wrong = particularProblem(key, definition, value);
    if (wrong?.code === "particular-wrong-type")
      return failure("wrong-type", { ...wrong.params, name: `asset.${key}` });
    return wrong ?? value;
  }

  /** A point that is not asked has no answer to reckon with, whatever was kept. */
  #answer(id: string): Scalar | Failure | undefined {
    const point = this.#prepared.byId.get(id);
    if (point === undefined) return undefined;
    const asked = this.asked(point);
    if (asked !== true) return asked === false ? undefined : asked;
    const given = this.given(point);
    if (given.is === "word") return given.value;
    // A censored reading is a half-line: no one number can stand for it.
    return given.is === "number" && given.comparator === "" ? given.value : undefined;
  }
}
