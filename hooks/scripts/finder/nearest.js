/* When nothing fits: what to let go of, and the ideas that lack least. And pages that help. */
/** @import { Answer } from "./answer.js" */
/** @import { Asked } from "./asked.js" */
/** @import { State } from "./address.js" */
/** @import { Data } from "./rows.js" */
/** @import { Found } from "./rank.js" */
import { at } from "../site/address.js";
import { element, link } from "../site/element.js";
import { count } from "./count.js";
import { nearestRows } from "./nearest_rows.js";
import { FACETS } from "./rows.js";

const NEAREST = 6, PAGES = 5;

/**
 * @typedef {{ choose: (value: number, on: boolean) => void, ask: (q: string) => void, clear: () => void }} Actions
 * @typedef {[words: string, act: () => void]} Offer words for a button and what it does
 */

/** @type {(data: Data, state: State, answer: Answer, actions: Actions) => Offer[]} */
const offersOf = (data, state, { asked, now, scores, absent }, { choose, ask, clear }) => {
  /** @type {Offer[]} */
  const offers = [];
  for (const value of state.order) {
    const { name, key } = data.values[value], bends = data.number.get(`year:b${key}`);
    if (name !== "year" || bends === undefined || now.chosen[bends]) continue;
    const left = count(data, now.chosen.map((on, other) => (other === bends ? 1 : on)), scores).fitting.length;
    if (left) offers.push([`What ${data.values[bends].words.replace("can", "can also")}: ${left}`, () => choose(bends, true)]);
  }
  for (const value of state.order) {
    const chosen = now.chosen.slice();
    chosen[value] = 0;
    const left = count(data, chosen, scores).fitting.length;
    if (left) offers.push([`Without “${data.values[value].words}”: ${left}`, () => choose(value, false)]);
  }
  for (const { text, values } of asked.filters) {
    const left = count(data, now.chosen.map((on, value) => (values.includes(value) ? 0 : on)), scores).fitting.length;
    if (left) offers.push([`Without “${text}”: ${left}`, () => ask(state.q.replace(text, ""))]);
  }
  if (asked.parts.length > absent.length) {
    for (const { text } of absent) offers.push([`Without “${text}”`, () => ask(state.q.replace(text, "").trim())]);
  }
  if (asked.parts.length && now.order.length) {
    const left = count(data, now.chosen, null).fitting.length;
    if (left) offers.push([`Without the words: ${left}`, () => ask(asked.filters.map(({ text }) => text).join(" "))]);
  }
  if (!offers.length && (state.q || state.order.length)) offers.push(["Start again", clear]);
  return offers;
};

/**
 * `rows` are the nearest, best first; `reasonFor` says what one lacks.
 * @type {(data: Data, state: State, answer: Answer, found: Found, actions: Actions)
 *   => { offers: Offer[], rows: number[], reasonFor: (row: number) => string[] }}
 */
export const nearest = (data, state, answer, found, actions) => {
  const lacks = new Map(answer.counted.near);
  return {
    offers: offersOf(data, state, answer, actions),
    rows: nearestRows(data, answer, found).slice(0, NEAREST),
    reasonFor: (row) => {
      const lacking = FACETS.filter((_, facet) => (lacks.get(row) ?? 0) >> facet & 1);
      return lacking.length ? [`all but the ${lacking.map(([, name]) => name.toLowerCase()).join(" and the ")}`] : [];
    },
  };
};

/**
 * A line that leads to the pages that answer by themselves, and those of concepts and themes that the words mean, or null.
 * @type {(data: Data, asked: Asked) => HTMLElement | null}
 */
export const drawPagesToo = (data, { parts, pages }) => {
  const meant = [...new Set(parts.flatMap(({ values }) => values))].map((value) => data.values[value]);
  /** @type {[address: string, words: string][]} */
  const named = [
    ...[...new Set(pages)].map((name) => /** @type {[string, string]} */ ([data.asked.pages[name], name])),
    ...meant.map(({ name, key, words }) => /** @type {[string, string]} */ ([`${name}s/${key}.html`, words.toLowerCase()])),
  ].slice(0, PAGES);
  if (!named.length) return null;
  const line = element("p", "pages-too", named.length === 1 ? "There is a page on " : "There are pages on ");
  named.forEach(([address, words], n) => line.append(n ? ", " : "", link(at(address), words)));
  line.append(".");
  return line;
};
