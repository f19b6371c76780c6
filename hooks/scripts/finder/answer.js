/* Answers a question from the columns and from where the text has its words: what is asked, what fits, best first. */
/** @import { State } from "./address.js" */
/** @import { Asked, Part } from "./asked.js" */
/** @import { Counted } from "./count.js" */
/** @import { Data } from "./rows.js" */
/** @import { Found } from "./rank.js" */
import { isUntaught, meaningsOf, understand } from "./asked.js";
import { count } from "./count.js";
import { namesOf, partsMet, rank, wordScores } from "./rank.js";
import { distance, standsIn, wordStands } from "./words.js";

/**
 * @typedef {{
 *   asked: Asked, now: State, scores: Float64Array | null, counted: Counted, rows: number[], untaught: Part[],
 *   absent: Part[], without: Part[],
 * }} Answer `now` is what is chosen with the filters typed; `untaught` are parts that nothing is of, `absent` words that
 *   stand nowhere, `without` parts that had to be let go of before anything was found, a whole book apart
 */

const LEAST_LETTERS = 5; // letters from which a word may be a slip in another

/**
 * The parts that the row that meets most of them meets, if one of these is an idea; a word that is in no dictionary says
 * more of what is looked for than an idea does. Words alone are never let go of: they may be a title.
 * @type {(data: Data, asked: Asked, found: Found, rows: number[]) => Part[]}
 */
const keep = (data, { parts }, found, rows) => {
  if (parts.length < 2) return parts;
  /** @type {Part[]} */
  let kept = [], most = 0;
  for (const row of rows) {
    const met = partsMet(data, row, parts, found);
    const worth = met.length + met.filter(({ values }) => !values.length).length / 100;
    if (worth > most && met.some(({ values }) => values.length)) [kept, most] = [met, worth];
  }
  return kept.length ? kept : parts;
};

/** @type {(data: Data, state: State, found: Found) => Answer} */
export const answer = (data, state, found) => {
  const asked = understand(data, state.q), chosen = state.chosen.slice(), order = [...state.order];
  for (const value of asked.filters.flatMap(({ values }) => values)) {
    if (!chosen[value]) order.push(value);
    chosen[value] = 1;
  }
  const now = { ...state, chosen, order }, untaught = asked.parts.filter((part) => isUntaught(data, part));
  const isPageAlone = asked.pages.length > 0 && !asked.parts.length && !order.length;
  const whole = count(data, chosen, isPageAlone ? new Float64Array(data.ideas.length) : wordScores(data, asked, found));
  /** @type {(rows: number[]) => number[]} */
  const inside = (rows) => rows.filter((row) => data.ideas[row].card !== "book-card");
  const able = inside(whole.fitting).length ? [] : count(data, chosen, null).fitting;
  const kept = isPageAlone || !able.length ? asked.parts : keep(data, asked, found, whole.fitting.length ? inside(able) : able);
  const scores = wordScores(data, { ...asked, parts: kept }, found);
  const counted = kept === asked.parts ? whole : count(data, chosen, scores);
  /** @type {(part: Part) => boolean} */
  const isAbsent = (part) => !part.values.length && !wordScores(data, { ...asked, parts: [part] }, found)?.some(Boolean);
  const absent = counted.fitting.length ? [] : asked.parts.filter(isAbsent);
  const without = asked.parts.filter((part) => !kept.includes(part));
  return { asked, now, scores, counted, untaught, absent, without, rows: rank(data, counted.fitting, now, scores) };
};

/** The word nearest to one that is nowhere: one that begins with it, or differs by a letter or two; or "". @type {(all: string[], text: string) => string} */
const nearWord = (all, text) => {
  const begins = text.length > 2 ? all.filter((word) => word.startsWith(text)) : [];
  if (begins.length) return begins.reduce((best, word) => (word.length < best.length ? word : best));
  const most = text.length > 6 ? 2 : 1;
  const near = all.filter((word) => word.length >= LEAST_LETTERS).map((word) => ({ word, far: distance(text, word) }));
  return near.filter(({ far }) => far <= most).sort((a, b) => a.far - b.far)[0]?.word ?? "";
};

/**
 * The question with each word that is nowhere changed for the nearest one that is somewhere; "" when there is none.
 * @type {(data: Data, q: string, found: Found) => string}
 */
export const guess = (data, q, found) => {
  const names = namesOf(data), meanings = [...meaningsOf(data).keys()].filter((key) => !key.includes(" "));
  const all = [...new Set([...meanings, ...names.flatMap((name) => name.all.split(/[^\p{L}]+/u))])];
  let guessed = q;
  for (const { text, values, last } of understand(data, q).parts) {
    const word = text.toLowerCase(), stands = last ? standsIn : wordStands;
    if (values.length || word.length < LEAST_LETTERS || /\d/.test(word) || found.get(text)?.size || names.some((name) => stands(name.all, word))) continue;
    const near = nearWord(all, word);
    if (near) guessed = guessed.replace(text, near);
  }
  return guessed === q ? "" : guessed;
};
