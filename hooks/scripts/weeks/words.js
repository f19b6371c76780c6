/* What a plan says of itself in sentences, how it names what is taught, and its rows to read. */
/** @import { Part } from "./lessons.js" */
/** @import { Plan } from "./plan.js" */
import { dayName, inWords, weekOf, yearOf } from "./dates.js";

/** @typedef {{ week: number, when: string, part: Part | null, why: string }} Row `why` nothing is taught, where it is not */

const FREE = "Left free";

/** A number of things: 1 day, 2 days. @type {(number: number, one: string) => string} */
export const counted = (number, one) => `${number} ${number === 1 ? one : `${one}s`}`;

/** The days with a lesson. @type {(plan: Plan) => { day: number, part: Part }[]} */
export const taught = (plan) => plan.days.flatMap(({ day, part }) => (part ? [{ day, part }] : []));

/** The number of a day's week, 1 for that of the first day. @type {(plan: Plan, day: number) => number} */
export const weekIn = (plan, day) => weekOf(day) - weekOf(plan.days[0].day) + 1;

/**
 * Books with weekends inside them: the title, and how many.
 * @type {(plan: Plan) => [title: string, weekends: number][]}
 */
export const cut = (plan) => {
  /** @type {Map<string, { title: string, first: number, last: number }>} */
  const books = new Map();
  for (const { day, part } of taught(plan)) {
    const { book, bookTitle } = part.lesson;
    books.set(book, { title: bookTitle, first: books.get(book)?.first ?? day, last: day });
  }
  return [...books.values()].flatMap(({ title, first, last }) => {
    const weekends = weekOf(last) - weekOf(first);
    return weekends ? [[title, weekends]] : [];
  });
};

/** @type {(plan: Plan, first: number, last: number) => string[]} */
const unknown = (plan, first, last) => {
  const { known } = plan.asked;
  if (!known || (known[0] <= yearOf(first) && yearOf(last) <= known[1])) return [];
  return [`Bank holidays are known here from ${known[0]} to ${known[1]}: add those of other years to your own days.`];
};

/**
 * How long the plan is, where weekends fall, what is left free, what is split, and what it does not know. A plan without
 * dates says only over how many weeks it runs.
 * @type {(plan: Plan, dated?: boolean) => string[]}
 */
export const sentences = (plan, dated = true) => {
  const on = taught(plan);
  if (!on.length) return ["There is nothing to teach: the series has no sessions."];
  const first = on[0].day, last = on[on.length - 1].day, weekends = cut(plan);
  const lessons = new Set(on.map(({ part }) => part.lesson)).size;
  const free = plan.days.filter(({ part, holiday }) => !part && holiday === null).length;
  const split = new Set(on.filter(({ part }) => part.of > 1).map(({ part }) => part.lesson)).size;
  const ends = dated ? `from ${inWords(first)} to ${inWords(last)}` : `over ${counted(weekIn(plan, last), "week")}`;
  const said = [`${counted(lessons, "session")} on ${counted(on.length, "day")}, ${ends}.`];
  said.push(...weekends.map(([title, number]) => `“${title}” has ${counted(number, "weekend")} in it.`));
  if (!weekends.length) said.push("No book is split by a weekend.");
  if (free) {
    said.push(`${counted(free, "day")} ${free === 1 ? "is" : "are"} left free, so that fewer books are split by a weekend.`);
  }
  if (split) {
    const longer = `longer than ${counted(plan.asked.minutes, "minute")}`;
    said.push(`${counted(split, "session")} ${split === 1 ? "is" : "are"} ${longer} and split at the end of a step.`);
  }
  return dated ? [...said, ...unknown(plan, first, last)] : said;
};

/**
 * Rows to read: one a day, and one a stretch of days of one week without a lesson for one reason. Without dates a day is
 * a weekday.
 * @type {(plan: Plan, dated?: boolean) => Row[]}
 */
export const rowsOf = (plan, dated = true) => {
  /** @type {{ week: number, first: number, last: number, part: Part | null, holiday: string | null }[]} */
  const stretches = [];
  for (const { day, part, holiday } of plan.days) {
    const before = stretches[stretches.length - 1], week = weekIn(plan, day);
    if (before && before.week === week && !part && !before.part && before.holiday === holiday) before.last = day;
    else stretches.push({ week, first: day, last: day, part, holiday });
  }
  return stretches.map(({ week, first, last, part, holiday }) => {
    const ends = first === last ? [first] : [first, last];
    const when = ends.map((day) => (dated ? inWords(day, false) : dayName(day))).join(" to ");
    return { week, when, part, why: part ? "" : holiday ?? FREE };
  });
};

/** What is taught: the title, and which part of it. @type {(part: Part) => string} */
export const nameOf = ({ lesson, number, of }) => lesson.title + (of > 1 ? ` (part ${number} of ${of})` : "");

/** @type {(part: Part) => string} */
export const stepsInWords = ({ steps }) => steps.map(([name, minutes]) => `${name}, ${counted(minutes, "minute")}`).join("; ");
