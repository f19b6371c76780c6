/* Which rows to show where nothing fits: of what is nearest in meaning, or lacking least, the nearest year first. */
/** @import { Answer } from "./answer.js" */
/** @import { Part } from "./asked.js" */
/** @import { Counted } from "./count.js" */
/** @import { State } from "./address.js" */
/** @import { Data } from "./rows.js" */
/** @import { Found } from "./rank.js" */
import { count } from "./count.js";
import { ideaScore, rank } from "./rank.js";

/**
 * Rows to show where nothing is of what some parts mean: of what is nearest to them, then those whose text has the
 * words; those that fit what is chosen first, and books last.
 * @type {(data: Data, state: State, untaught: Part[], found: Found) => number[]}
 */
const instead = (data, state, untaught, found) => {
  const { fitting } = count(data, state.chosen, null), fits = new Set(fitting);
  /** @type {(row: number) => number} */
  const worth = (row) => Math.max(...untaught.map(({ text, nearest }) => (
    ideaScore(data, row, nearest) || (found.get(text)?.has(row) ? 1 : 0))));
  const points = new Map(data.ideas.map(({ row, card }) => [row, (card === "book-card" ? 0.5 : 1) * worth(row)]));
  return [...points.keys()].filter((row) => points.get(row))
    .sort((a, b) => Number(fits.has(b)) - Number(fits.has(a)) || Number(points.get(b)) - Number(points.get(a)) || a - b);
};

/**
 * Rows with those first that are for a year, or can be taught to one, that is nearest to a chosen year.
 * @type {(data: Data, rows: number[], now: State) => number[]}
 */
const byYear = (data, rows, now) => {
  const wanted = now.order.map((value) => data.values[value]).filter(({ name, bend }) => name === "year" && bend === undefined);
  /** @type {(row: number) => number} */
  const far = (row) => Math.min(...yearsOf(data, row).flatMap((year) => wanted.map(({ key }) => Math.abs(Number(key) - year))));
  return wanted.length ? rows.sort((a, b) => far(a) - far(b)) : rows;
};

/**
 * Rows with those first that take about as long as was asked for.
 * @type {(data: Data, rows: number[], now: State) => number[]}
 */
const byMinutes = (data, rows, now) => {
  const spans = now.order.filter((value) => data.values[value].name === "minutes");
  /** @type {(row: number) => number} */
  const far = (row) => {
    const { minutes } = data.ideas[row];
    return minutes ? Math.min(...spans.map((span) => Math.abs(span - data.spanOf(minutes)))) : Infinity;
  };
  return spans.length ? rows.sort((a, b) => (far(a) === far(b) ? data.ideas[a].minutes - data.ideas[b].minutes : far(a) - far(b))) : rows;
};

/** The years a row is for or can be taught to. @type {(data: Data, row: number) => number[]} */
const yearsOf = (data, row) => [...data.has.subarray(data.first[row], data.first[row + 1])].flatMap((value) => {
  const { name, key, bend } = data.values[value];
  return name === "year" ? [bend ?? Number(key)] : [];
});

/**
 * Rows that lack least; where no row has the words, those that have all else that was asked.
 * @type {(data: Data, counted: Counted, now: State) => number[]}
 */
const lackingLeast = (data, { near }, now) => (
  near.length || !now.order.length ? near.map(([row]) => row) : count(data, now.chosen, null).fitting);

/** Rows to show where nothing fits, best first. @type {(data: Data, answer: Answer, found: Found) => number[]} */
export const nearestRows = (data, { counted, now, scores, untaught }, found) => (
  untaught.length ? instead(data, now, untaught, found)
    : byYear(data, byMinutes(data, rank(data, lackingLeast(data, counted, now), now, scores), now), now));
