import { MONTHS, type OnDay, onDayWords, type RruleForm, WEEKDAYS } from "@roundbook/runner/form";
import { civilParts, parseCivilDate, weekday } from "@roundbook/schemas";

const NTHS: Readonly<Record<string, number>> = {
  first: 1,
  second: 2,
  third: 3,
  fourth: 4,
  last: -1,
};

/** The place of a word in a list, from 1, by its first three letters or more; 0 when it is none. */
const placeOf = (word: string, list: readonly string[]): number =>
  word.length < 3 ? 0 : list.findIndex((one) => one.toLowerCase().startsWith(word)) + 1;

const clean = (text: string): string =>
  text.trim().toLowerCase().replace(/\s+/g, " ").replace(/^on /, "").replace(/^the /, "");

/** "the last Friday", "the last day", "the 15th" or "15" as a day of a month. */
export const readOnDay = (text: string): OnDay | undefined => {
  const words = clean(text);
  if (words === "last day" || words === "last") return { day: -1 };
  const day = Number(/^(\d{1,2})(st|nd|rd|th)?$/.exec(words)?.[1]);
  if (day >= 1 && day <= 31) return { day };
  const [, nth = "", name = ""] = /^([a-z]+|[1-4](?:st|nd|rd|th)) ([a-z]+)$/.exec(words) ?? [];
  const number = /^\d/.test(nth) ? Number(nth[0]) : NTHS[nth];
  const at = placeOf(name, WEEKDAYS);
  return number === undefined || at === 0 ? undefined : { nth: number, weekday: at };
};

/** "1 March" or "the first Monday of March" as a day of a year. */
export const readYearDay = (text: string): { month: number; on: OnDay } | undefined => {
  const [, on = "", name = ""] = /^(.+?)(?: of| in)? ([a-z]+)\.?$/.exec(clean(text)) ?? [];
  const month = placeOf(name, MONTHS);
  const read = readOnDay(on);
  if (month === 0 || read === undefined) return undefined;
  const most = month === 2 ? 29 : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return "day" in read && read.day > most ? undefined : { month, on: read };
};

/** As `readYearDay` reads it. */
export const yearDayWords = ({ month, on }: { month: number; on: OnDay }): string => {
  const name = MONTHS[month - 1] ?? "";
  return "day" in on && on.day > 0 ? `${on.day} ${name}` : `${onDayWords(on)} of ${name}`;
};

const OFTEN = /^(?:each |every )?(\d{1,4})? ?(day|week|month|year)s?$/;

/** "2 weeks", or "month" for each one. */
export const readOften = (text: string): Pick<RruleForm, "every" | "by"> | undefined => {
  const [, count = "1", by] = OFTEN.exec(clean(text)) ?? [];
  const every = Number(count);
  return by === undefined || every < 1 ? undefined : { every, by: by as RruleForm["by"] };
};

export const oftenWords = ({ every, by }: RruleForm): string =>
  every === 1 ? by : `${every} ${by}s`;

/** The same rule so often, on a day of its first date where the unit is another one. */
export const setOften = (
  form: RruleForm | null,
  often: Pick<RruleForm, "every" | "by">,
  start: string,
): RruleForm => {
  const { every, by } = often;
  if (form?.by === by) return { ...form, every };
  const day = parseCivilDate(start);
  const { month = 1, day: dayOfMonth = 1 } = day === undefined ? {} : civilParts(day);
  const ends = form?.ends === undefined ? {} : { ends: form.ends };
  const on = form?.by === "month" || form?.by === "year" ? form.on : { day: dayOfMonth };
  switch (by) {
    case "day":
      return { by, every, ...ends };
    case "week":
      return { by, every, ...ends, days: day === undefined ? [] : [weekday(day)] };
    case "month":
      return { by, every, ...ends, on };
    case "year":
      return { by, every, ...ends, month, on };
  }
};
