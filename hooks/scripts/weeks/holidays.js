/* A school's own holidays, one a line, as 15/02/2027 - 19/02/2027 Half term: what they say, and what cannot be read. */
import { dayOf, dayOfParts, inWords, readParts } from "./dates.js";

/**
 * @typedef {{ first: number, last: number, name: string }} Holiday both days included
 * @typedef {import("./dates.js").Parts} Parts
 * @typedef {{ line: number, column: number, why: string }} Unread a line that could not be taken as meant, counted from 1
 */

const NO_NAME = "No school", LONGEST = 366;
/** What joins two days: with ".." a day must follow, after the rest a name may. */
const JOIN = /^[ \t]*(?:(\.\.)|[-–—]|(?:to|until|till)(?=[ \t]))[ \t]*/iu, BEFORE_NAME = /^[ \t]*[-–—:,;]?[ \t]*/u;

/** How many characters: columns count them, not halves of them. @type {(words: string) => number} */
const long = (words) => [...words].length;

/** The first day of a stretch, with what only its last day says: 28 Dec - 3 Jan 2027. @type {(to: Parts, from: Parts) => Parts} */
const filledFrom = (to, from) => {
  const month = from.month ?? to.month, turns = month !== null && to.month !== null && month > to.month;
  return { ...from, month, year: from.year ?? (to.year === null ? null : to.year - Number(turns)) };
};

/** @type {(said: string, line: number, column: number) => Holiday | Unread} */
const readLine = (said, line, column) => {
  const from = readParts(said);
  if (!from) return { line, column, why: dayOf(said.split(/[ \t]|\.\./)[0]).why ?? "" };
  const joined = JOIN.exec(said.slice(from.words.length)), at = from.words.length + (joined?.[0].length ?? 0);
  const to = joined ? readParts(said.slice(at)) : null;
  if (joined?.[1] && !to) return { line, column: column + long(said.slice(0, at)), why: dayOf(said.slice(at).split(/[ \t]/)[0]).why ?? "" };
  const start = dayOfParts(to ? filledFrom(to, from) : from);
  if (start.day === null) return { line, column, why: start.why };
  const end = to ? dayOfParts({ ...to, month: to.month ?? from.month, year: to.year ?? from.year }) : start;
  if (end.day === null) return { line, column: column + long(said.slice(0, at)), why: end.why };
  if (end.day < start.day) return { line, column, why: `It ends on ${inWords(end.day)}, before it starts on ${inWords(start.day)}.` };
  const many = end.day - start.day + 1;
  if (many > LONGEST) return { line, column, why: `It is ${many} days long, which is more than a year.` };
  const name = said.slice(to ? at + to.words.length : from.words.length).replace(BEFORE_NAME, "");
  const named = name.replace(/[\x00-\x1f\x7f]/g, " ").replace(/^ +| +$/g, "");
  return { first: start.day, last: end.day, name: named || NO_NAME };
};

/**
 * The holidays of a text in its order, and every line that could not be read. A line is a day, or two days with
 * "-", "to" or ".." between, both without school, and then what to call it, which may be left out. Empty lines and lines that begin with
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
