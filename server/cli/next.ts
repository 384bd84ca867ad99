import {
  type CivilDate,
  computeWindow,
  type DueStatus,
  type DueWindow,
  formatCivilDate,
  hasDates,
  type Problem,
  statusOn,
} from "@roundbook/schemas";
import { say } from "../words/say.ts";
import { answerLines, told } from "./answer-lines.ts";
import { readArguments } from "./arguments.ts";
import type { Verb } from "./io.ts";
import { readNextLine } from "./next-line.ts";

interface Answer {
  readonly window: DueWindow;
  readonly status: DueStatus;
  readonly on: CivilDate;
}

const written = (day: CivilDate | null): string | null =>
  day === null ? null : formatCivilDate(day);

/** Dates are null where there is none: no event has asked for it yet, or its series is over. */
function toJson({ window, status }: Answer): string {
  const { earliest, due, latest, from, lastDone, why, closure } = window;
  const dates = hasDates(window)
    ? { earliest: written(earliest), due: written(due), latest: written(latest) }
    : { earliest: null, due: null, latest: null };
  return JSON.stringify({
    ...dates,
    status,
    sentence: say(why),
    explanation: why,
    from,
    lastDone: written(lastDone),
    closure:
      closure === undefined
        ? null
        : { ...closure, from: written(closure.from), reopens: written(closure.reopens) },
    problems: [],
  });
}

const days = (count: number): string => `${count} ${count === 1 ? "day" : "days"}`;

/** A status as people say it. */
function saidOf(status: DueStatus, { latest, closure }: DueWindow, on: CivilDate): string {
  switch (status) {
    case "not-yet":
      return "not yet";
    case "early":
      return "early window";
    case "due":
      return "due";
    case "late-window":
      return "due, in the late window";
    case "overdue":
      return `overdue by ${days(on - latest)}`;
    case "never-done":
      return "never done";
    case "undecided":
      return "undecided";
    case "excused":
      return `excused until ${written(closure?.reopens ?? null)}`;
    case "blocked":
      return "blocked: not to be used before it is done";
  }
}

function toText({ window, status, on }: Answer): string {
  const { earliest, due, latest, why } = window;
  const said = saidOf(status, window, on);
  if (!hasDates(window)) return `${said}; no date: ${say(why)}`;
  const span =
    earliest === due && due === latest ? "" : ` (${written(earliest)} to ${written(latest)})`;
  return `${said}; due ${written(due)}${span}: ${say(why)}`;
}

/** A line that could not be read: the same members, and nothing that looks like a date. */
const unread = (line: number, problems: readonly Problem[]): string =>
  JSON.stringify({
    earliest: null,
    due: null,
    latest: null,
    status: null,
    sentence: null,
    explanation: null,
    from: null,
    lastDone: null,
    closure: null,
    problems: told(problems),
    line,
  });

/** When something is due next, from what is on its line alone; see `readNextLine` for its form. */
export const next: Verb = {
  usage:
    "next --json  < lines of {interval, history, on, calendar?, registered?, particulars?, events?, meter?, override?}",
  async run(args, io) {
    const plain = !readArguments(args, [], {}).values.json;
    return answerLines(io, {
      answer(given) {
        const read = readNextLine(given);
        if (!read.ok) return read;
        const { rule, facts, on } = read.value;
        const window = computeWindow(rule, facts);
        const answer = { window, status: statusOn(window, on), on };
        return { ok: true, value: plain ? toText(answer) : toJson(answer) };
      },
      refused: (line, problems) => (plain ? "not worked out" : unread(line, problems)),
    });
  },
};
