/* A plan as a table for a spreadsheet: RFC 4180 (comma, CRLF, quotes doubled), and a byte order mark. */
/** @import { Plan } from "./plan.js" */
import { dayName, iso } from "./dates.js";
import { stepsInWords, taught, weekIn } from "./words.js";

const HEADINGS = "Week,Date,Day,Book,Session,Title,Part,Parts,Minutes,Reads,Steps,Class".split(",");

/**
 * A cell: never a formula (OWASP, CSV Injection), and quoted where it must be.
 * @type {(value: string | number) => string}
 */
export const cell = (value) => {
  const words = String(value), plain = /^[=+\-@\t\r\n＝＋－＠]/.test(words) ? `'${words}` : words;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
};

/** A row a lesson or part of one, in order; days without are left out. @type {(plan: Plan) => string} */
export const asCsv = (plan) => {
  const rows = taught(plan).map(({ day, part }) => {
    const { bookTitle, number, title, reads } = part.lesson;
    return [weekIn(plan, day), iso(day), dayName(day), bookTitle, number, title, part.number, part.of,
      part.minutes, reads, stepsInWords(part), plan.asked.ofClass];
  });
  return `\ufeff${[HEADINGS, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("")}`;
};
