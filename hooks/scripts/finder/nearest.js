/* When nothing fits: what to let go of, what else to type, and the ideas that lack least. And pages that help. */
/** @import { State } from "./address.js" */
/** @import { Counted } from "./count.js" */
/** @import { Data } from "./rows.js" */
import { at } from "../site/address.js";
import { element, link } from "../site/element.js";
import { count } from "./count.js";
import { nearWords, rank } from "./rank.js";
import { FACETS } from "./rows.js";
import { standsIn, wordsOf } from "./words.js";

const NEAREST = 6, PAGES = 4;

/**
 * @typedef {{ choose: (value: number, on: boolean) => void, ask: (q: string) => void, clear: () => void }} Actions
 * @typedef {[words: string, act: () => void]} Offer words for a button and what it does
 */

/** @type {(data: Data, state: State, scores: Float64Array | null, counted: Counted, actions: Actions) => Offer[]} */
const offersOf = (data, state, scores, { near, needed }, { choose, ask, clear }) => {
  /** @type {Offer[]} */
  const offers = [];
  for (const value of state.order) {
    const chosen = state.chosen.slice();
    chosen[value] = 0;
    const left = count(data, chosen, scores).fitting.length;
    if (left) offers.push([`Without “${data.values[value].words}”: ${left}`, () => choose(value, false)]);
  }
  if (state.q && needed) {
    const left = count(data, state.chosen, null).fitting.length;
    if (left) offers.push([`Without the words: ${left}`, () => ask("")]);
  }
  const words = state.q && !near.length ? nearWords(data, state.q) : [];
  for (const word of words) offers.push([`Try “${word}”`, () => ask(word)]);
  if (!offers.length && (state.q || state.order.length)) offers.push(["Start again", clear]);
  return offers;
};

/**
 * `rows` are the nearest, best first; `reasonFor` says what one lacks.
 * @type {(data: Data, state: State, scores: Float64Array | null, counted: Counted, actions: Actions)
 *   => { offers: Offer[], rows: number[], reasonFor: (row: number) => string }}
 */
export const nearest = (data, state, scores, counted, actions) => {
  const lacks = new Map(counted.near);
  return {
    offers: offersOf(data, state, scores, counted, actions),
    rows: rank(data, counted.near.map(([row]) => row), state, scores).slice(0, NEAREST),
    reasonFor: (row) => {
      const lacking = FACETS.filter((_, facet) => (lacks.get(row) ?? 0) >> facet & 1);
      return `all but the ${lacking.map(([, name]) => name.toLowerCase()).join(" and the ")}`;
    },
  };
};

/**
 * A line that leads to the pages of concepts the words name, or null.
 * @type {(data: Data, q: string) => HTMLElement | null}
 */
export const drawPagesToo = (data, q) => {
  const asked = wordsOf(q);
  if (!asked.length || q.length < 3) return null;
  const named = data.columns.concepts.filter(([, name]) => asked.every((word) => standsIn(name.toLowerCase(), word)))
    .slice(0, PAGES);
  if (!named.length) return null;
  const line = element("p", "pages-too", named.length === 1 ? "There is a page on " : "There are pages on ");
  named.forEach(([id, name], n) => line.append(n ? ", " : "", link(at(`concepts/${id}.html`), name.toLowerCase())));
  line.append(".");
  return line;
};
