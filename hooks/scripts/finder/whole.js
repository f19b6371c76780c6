/* The finder without a page: from its columns and the questions of the pages to what it shows for a question. */
/** @import { Columns } from "./rows.js" */
import { answer, guess } from "./answer.js";
import { partsForText } from "./asked.js";
import { nearestRows } from "./nearest_rows.js";
import { read } from "./rows.js";
import { rowsWith } from "./words.js";

/**
 * `rows` are found, best first; `shownFor` is the question that was answered where a word was guessed; `untaught` are words
 * of which there is nothing, `without` those that were let go of, and `nearest` the rows to show where there are none;
 * `chosen` are filters that were typed.
 * @type {(columns: Columns, questions: string[], asked: string)
 *   => { rows: number[], shownFor: string, untaught: string[], without: string[], nearest: number[], chosen: string[] }}
 */
export const find = (columns, questions, asked) => {
  const data = read(columns);
  /** @type {(q: string) => Map<string, Map<number, { rank: number }>>} */
  const inText = (q) => new Map(partsForText(data, q).map(({ text, last }) => (
    [text, new Map(rowsWith(questions, text, last).map((row, rank) => [row, { rank }]))])));
  const shownFor = guess(data, asked, inText(asked)), q = shownFor || asked, found = inText(q);
  const answered = answer(data, { q, chosen: new Uint8Array(data.values.length), order: [], shown: 0 }, found);
  const { rows, untaught, without, now } = answered;
  return {
    rows, shownFor, untaught: untaught.map(({ text }) => text), without: without.map(({ text }) => text),
    nearest: rows.length ? [] : nearestRows(data, answered, found),
    chosen: now.order.map((value) => `${data.values[value].name}:${data.values[value].key}`),
  };
};
