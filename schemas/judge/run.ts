import { answerName } from "../checklist/answer-name.ts";
import type { Answers, Evidence, Particulars } from "../checklist/answer-types.ts";
import { particularProblem } from "../checklist/parse-particulars.ts";
import { parseCivilDate } from "../due/civil.ts";
import {
  type Failure,
  type FormulaContext,
  failure,
  isFailure,
  type Scalar,
} from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";
import { numberOf } from "./expression.ts";
import { explained, type Given, own } from "./given.ts";
import { judgePoint } from "./judge-point.ts";
import type { PointVerdict, RepeatJudgement } from "./judgement.ts";
import type { Asked, Judging } from "./judging.ts";
import { membersOf } from "./members.ts";
import type { Prepared, PreparedPoint, PreparedRepeat } from "./prepared.ts";
import { resolveMany } from "./resolve-many.ts";
import { standsFor } from "./stands-for.ts";
import { stoppedBy } from "./stopped-by.ts";

export interface JudgeInput {
  readonly particulars: Particulars;
  readonly answers: Answers;
  readonly evidence?: Evidence;
  /** Answers of the last complete inspection of the asset under the same checklist. */
  readonly previous?: Answers;
  /** The civil date of the inspection, YYYY-MM-DD: what a limit on a date calls today. */
  readonly on?: string;
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

/** One member of a repeat, and the judging of the whole sheet that it is part of. */
interface MemberPlace {
  readonly sheet: Run;
  readonly repeat: PreparedRepeat;
  readonly member: string;
}

/**
 * One judging under way, of the whole sheet or of one member of a repeat. Names are looked up when
 * a formula first needs them and kept; a name that leads back to itself meets a failure in its own
 * place. Points asked once are worked out by the sheet alone, so that every member sees the same.
 */
export class Run implements Judging {
  readonly #prepared: Prepared;
  readonly input: JudgeInput;
  readonly #sheet: Run;
  readonly #repeat: PreparedRepeat | undefined;
  readonly #member: string | null;
  #context: Context | undefined = undefined;
  #asked: Map<string, Asked> | undefined = undefined;
  #verdicts: Map<string, PointVerdict> | undefined = undefined;
  #members: Map<string, RepeatJudgement> | undefined = undefined;
  #before: Run | undefined = undefined;
  /** Of the sheet: its members by repeat, each once, so that what they work out is kept. */
  #runs: Map<PreparedRepeat, Map<string, Run>> | undefined = undefined;

  constructor(prepared: Prepared, input: JudgeInput, place?: MemberPlace) {
    this.#prepared = prepared;
    this.input = input;
    this.#sheet = place?.sheet ?? this;
    this.#repeat = place?.repeat;
    this.#member = place?.member ?? null;
    for (const name of prepared.neededFirst) {
      const point = prepared.byId.get(name);
      if (point?.repeat === this.#repeat) this.need([`answers.${name}`]);
    }
  }

  forMember(repeat: PreparedRepeat, member: string): Run {
    const sheet = this.#sheet;
    sheet.#runs ??= new Map();
    const runs = sheet.#runs.get(repeat) ?? new Map<string, Run>();
    sheet.#runs.set(repeat, runs);
    const run = runs.get(member) ?? new Run(this.#prepared, this.input, { sheet, repeat, member });
    runs.set(member, run);
    return run;
  }

  /** Where a point that this run sees is worked out. */
  #home(point: PreparedPoint): Run {
    return point.repeat === undefined ? this.#sheet : this;
  }

  /** What formulas see; checklists without any never need one. */
  get context(): Context {
    this.#context ??= { asset: bag(), answers: bag(), values: bag() };
    return this.#context;
  }

  /** Whether a point is asked as often as this run is: of another repeat there is no one answer. */
  #sees(point: PreparedPoint): boolean {
    return point.repeat === undefined || point.repeat === this.#repeat;
  }

  nameOf(point: PreparedPoint): string {
    return point.repeat !== undefined && point.repeat === this.#repeat
      ? answerName(point.id, this.#member)
      : point.id;
  }

  given(point: PreparedPoint): Given {
    return this.#home(point).givenFrom(point, own(this.input.answers, this.nameOf(point)));
  }

  /** What an answer comes to, and what is worked out where none is ever given. */
  givenFrom(point: PreparedPoint, answer: unknown): Given {
    if (point.calculate !== undefined) return this.#calculated(point);
    const given = point.read(answer);
    return given.is === "many" ? resolveMany(point, given, this) : given;
  }

  #calculated({ calculate, unit }: PreparedPoint): Given {
    if (calculate === undefined) return { is: "missing" };
    const value = numberOf(calculate, this);
    if (isFailure(value)) return { is: "unusable", why: value };
    const rounded = roundSignificant(value);
    return unit === null
      ? { is: "unusable", why: explained("unit-not-convertible", { unit: null, to: null }) }
      : { is: "number", value: rounded, comparator: "" };
  }

  asked(point: PreparedPoint): Asked {
    if (point.when === undefined && point.stops.length === 0) return true;
    const home = this.#home(point);
    if (home !== this) return home.asked(point);
    this.#asked ??= new Map();
    const known = this.#asked.get(point.id);
    if (known !== undefined) return known;
    this.#asked.set(point.id, failure("cycle", { name: `answers.${point.id}` }));
    const asked = this.#askedNow(point);
    this.#asked.set(point.id, asked);
    return asked;
  }

  #askedNow(point: PreparedPoint): Asked {
    const outcome = point.when?.evaluate(this) ?? true;
    if (outcome === false) return false;
    // What cannot be told may be a stop as well: it only ever keeps from passing.
    const stopped = stoppedBy(point, this);
    if (stopped !== undefined && (stopped.code === "stopped" || outcome === true)) return stopped;
    if (typeof outcome === "boolean" || typeof outcome === "object") return outcome;
    return failure("wrong-type", { name: point.when?.source ?? "", expected: "boolean" });
  }

  verdictsOn(point: PreparedPoint): readonly PointVerdict[] {
    const { repeat } = point;
    if (repeat === undefined || this.#sees(point)) return [this.#home(point).#verdictOn(point)];
    const { members, expected } = this.members(repeat);
    const verdicts = members.map(({ id }) => this.forMember(repeat, id).#verdictOn(point));
    return expected === null ? [...verdicts, "undecided"] : verdicts;
  }

  #verdictOn(point: PreparedPoint): PointVerdict {
    this.#verdicts ??= new Map();
    const known = this.#verdicts.get(point.id);
    if (known !== undefined) return known;
    this.#verdicts.set(point.id, "undecided");
    const asked = this.asked(point);
    const given: Given = asked === true ? this.given(point) : { is: "missing" };
    const { verdict } = judgePoint(this, point, asked, given, false);
    this.#verdicts.set(point.id, verdict);
    return verdict;
  }

  members(repeat: PreparedRepeat): RepeatJudgement {
    if (this.#sheet !== this) return this.#sheet.members(repeat);
    this.#members ??= new Map();
    const known = this.#members.get(repeat.id) ?? membersOf(repeat, this);
    this.#members.set(repeat.id, known);
    return known;
  }

  last(point: PreparedPoint): Given | undefined {
    const before = this.#last();
    if (before === undefined) return undefined;
    const asked = before.asked(point);
    const given = before.given(point);
    const isWorkedOut = given.is === "unusable" && point.calculate !== undefined;
    if (asked === false || (given.is !== "number" && !isWorkedOut)) return undefined;
    if (isWorkedOut && given.why.code === "missing") return undefined;
    // Stops hang on that day and on the time before it, which nobody knows any more: a reading that
    // was taken is compared with, and one that may not have counted is not taken for none.
    return asked === true || asked.code === "stop-undecided"
      ? given
      : { is: "unusable", why: explained("no-last") };
  }

  /** The last inspection, seen from the same place. */
  #last(): Run | undefined {
    const { previous, ...rest } = this.input;
    if (previous === undefined) return undefined;
    const sheet = this.#sheet;
    sheet.#before ??= new Run(this.#prepared, { ...rest, answers: previous });
    return this.#repeat === undefined || this.#member === null
      ? sheet.#before
      : sheet.#before.forMember(this.#repeat, this.#member);
  }

  day(name: string): number | Failure {
    if (name === "today") {
      const day = this.input.on === undefined ? undefined : parseCivilDate(this.input.on);
      return day ?? failure("missing", { name });
    }
    if (name.startsWith("asset.")) {
      const value = this.#particular(name.slice(6));
      if (isFailure(value)) return value;
      const day = typeof value === "string" ? parseCivilDate(value) : undefined;
      return day ?? failure("missing", { name });
    }
    const point = this.#prepared.byId.get(name.slice(8));
    if (point === undefined || !this.#sees(point)) return failure("missing", { name });
    const asked = this.asked(point);
    if (asked !== true) return asked === false ? failure("missing", { name }) : asked;
    const given = this.given(point);
    return given.is === "date" ? given.day : failure("missing", { name });
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
    if (point === undefined || !this.#sees(point)) return undefined;
    const home = this.#home(point);
    if (home !== this) {
      home.need([`answers.${id}`]);
      return home.context.answers[id];
    }
    // A calculated point may lead back to itself: its own place holds a failure meanwhile.
    if (point.calculate !== undefined)
      this.context.answers[id] = failure("cycle", { name: `answers.${id}` });
    const asked = this.asked(point);
    const value = asked === true ? this.#scalarOf(point) : undefined;
    if (point.calculate !== undefined) this.context.answers[id] = value;
    return asked === true || asked === false || asked.code === "stopped" ? value : asked;
  }

  #scalarOf(point: PreparedPoint): Scalar | Failure | undefined {
    const given = this.given(point);
    if (given.is === "word") return given.value;
    if (point.calculate !== undefined && given.is === "unusable") return given.why;
    return standsFor(point, given);
  }
}
