/* A school's own holidays, one a line, as 2027-02-15..2027-02-19 Half term: what they say, and what cannot be read. */
import { dayOf, iso } from "./dates.js";

/**
 * @typedef {{ first: number, last: number, name: string }} Holiday both days included
 * @typedef {{ line: number, column: number, why: string }} Unread a line that could not be taken as meant, counted from 1
 */

const NO_NAME = "No school", LONGEST = 366, JOIN = "..";
const JOINED = 'Two days of one line are joined by ".." with no space: 2027-02-15..2027-02-19.';

/** How many characters: columns count them, not halves of them. @type {(words: string) => number} */
const long = (words) => [...words].length;

/** @type {(said: string, line: number, column: number) => Holiday | Unread} */
const readLine = (said, line, column) => {
  const [, days, name] = /^([^ \t]*)[ \t]?(.*)$/su.exec(said) ?? ["", said, ""];
  const second = name.search(/[0-9]{4}-[0-9]{2}-[0-9]{2}/);
  if (second >= 0) return { line, column: column + long(days + name.slice(0, second)) + 1, why: JOINED };
  const at = days.indexOf(JOIN), first = at < 0 ? days : days.slice(0, at);
  const start = dayOf(first);
  if (start.day === null) return { line, column, why: start.why };
  const end = at < 0 ? start : dayOf(days.slice(at + JOIN.length));
  if (end.day === null) return { line, column: column + long(first + JOIN), why: end.why };
  if (end.day < start.day) return { line, column, why: `It ends on ${iso(end.day)}, before it starts on ${iso(start.day)}.` };
  const many = end.day - start.day + 1;
  if (many > LONGEST) return { line, column, why: `It is ${many} days long, which is more than a year.` };
  const named = name.replace(/[\x00-\x1f\x7f]/g, " ").replace(/^ +| +$/g, "");
  return { first: start.day, last: end.day, name: named || NO_NAME };
};

/**
 * The holidays of a text in its order, and every line that could not be read. A line is a day, or two days with ".."
 * between, both without school, and then what to call it, which may be left out. Empty lines and lines that begin with
 * "#" say nothing.
 * @type {(text: string) => { holidays: Holiday[], unread: Unread[] }}
 */
export const readHolidays = (text) => {
  /** @type {{ holidays: Holiday[], unread: Unread[] }} */
  const found = { holidays: [], unread: [] };
  text.replace(/^\ufeff/, "").split(/\r\n|\n|\r/).forEach((line, n) => {
    const said = line.replace(/^[ \t]+|[ \t]+$/g, "");
    if (!said || said.startsWith("#")) return;
    const one = readLine(said, n + 1, line.indexOf(said) + 1);
    if ("why" in one) found.unread.push(one);
    else found.holidays.push(one);
  });
  return found;
};
