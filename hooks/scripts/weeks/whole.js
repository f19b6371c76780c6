/* A plan with all that is made of it, for the site's own pages and the command: read by hooks/storymaths/weeks/plan.py. */
/** @import { Part, SeriesData } from "./lessons.js" */
/** @import { Asked } from "./plan.js" */
import { asICalendar } from "./calendar.js";
import { lessonsOf } from "./lessons.js";
import { layLessons } from "./plan.js";
import { asCsv } from "./table.js";
import { cut, nameOf, rowsOf, sentences, stepsInWords } from "./words.js";

/**
 * Lessons are named by their places in the series.
 * @param {SeriesData} data @param {Asked} asked @param {boolean} dated
 */
export const wholePlan = (data, asked, dated) => {
  const lessons = lessonsOf(data), plan = layLessons(lessons, asked);
  /** @type {(part: Part | null) => object | null} */
  const named = (part) => part && (
    { ...part, lesson: lessons.indexOf(part.lesson), name: nameOf(part), steps_in_words: stepsInWords(part) });
  return {
    days: plan.days.map((day) => ({ ...day, part: named(day.part) })),
    rows: rowsOf(plan, dated).map((row) => ({ ...row, part: named(row.part) })),
    sentences: sentences(plan, dated),
    cut: cut(plan),
    csv: asCsv(plan),
    calendar: asICalendar(data, plan),
  };
};
