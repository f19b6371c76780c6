/* A plan of the weeks: what is taught on which day, which days are holidays, and which are left free. */
/** @import { Holiday } from "./holidays.js" */
/** @import { Lesson, Part } from "./lessons.js" */
import { weekOf, weekday } from "./dates.js";
import { atOnce, lay } from "./lay.js";
import { partsOf } from "./lessons.js";

/**
 * @typedef {{
 *   start: number, minutes: number, days: number[], holidays: Holiday[], known: [number, number] | null, waits: boolean,
 *   ofClass: string,
 * }} Asked of a plan: the first day; the most minutes a day has; weekdays, 0 for Monday to 4 for Friday; holidays, of
 *   which the first in order counts, and the first and last year whose bank holidays are among them; whether days may be
 *   left free so that weekends cut books less; whose plan it is, where somebody plans for more than one class
 * @typedef {{ day: number, part: Part | null, holiday: string | null }} Day one with neither is left free
 * @typedef {{ asked: Asked, days: Day[] }} Plan every chosen weekday from the first to the last lesson's, in order
 */

/** The parts book by book. @type {(parts: Part[]) => Part[][]} */
const byBook = (parts) => {
  /** @type {Part[][]} */
  const books = [];
  for (const part of parts) {
    const before = books[books.length - 1];
    if (before && before[0].lesson.book === part.lesson.book) before.push(part);
    else books.push([part]);
  }
  return books;
};

/**
 * Lays lessons, in their order, on the days asked for: at most one a day, longer ones split at a step. Every step must
 * fit into the minutes of a day, and the lessons of a book stand together.
 *
 * After the last holiday every week is alike, and a book that begins with such a week is cut as little as any can be; so
 * nothing better comes later than a week or two a book beyond that.
 * @type {(lessons: Lesson[], asked: Asked) => Plan}
 */
export const layLessons = (lessons, asked) => {
  /** @type {(day: number) => string | null} */
  const holidayOn = (day) => asked.holidays.find(({ first, last }) => first <= day && day <= last)?.name ?? null;
  const books = byBook(lessons.flatMap((lesson) => partsOf(lesson, asked.minutes)));
  const needed = books.map((book) => book.length);
  const over = needed.reduce((all, days) => all + Math.ceil(days / asked.days.length) + 1, 1);
  const end = asked.holidays.reduce((last, holiday) => Math.max(last, holiday.last), asked.start) + 7 * over;
  /** @type {number[]} */
  const chosen = [];
  for (let day = asked.start; day <= end; day += 1) if (asked.days.includes(weekday(day))) chosen.push(day);
  const school = chosen.filter((day) => holidayOn(day) === null);
  /** @type {Map<number, Part>} */
  const on = new Map();
  const places = asked.waits ? lay(needed, school.map(weekOf)) : atOnce(needed);
  places.forEach((start, n) => {
    books[n].forEach((part, place) => on.set(school[start + place], part));
  });
  const last = Math.max(...on.keys());
  const days = chosen.filter((day) => day <= last);
  return { asked, days: days.map((day) => ({ day, part: on.get(day) ?? null, holiday: holidayOn(day) })) };
};
