/* Draws what is chosen as chips to take away. */
/** @import { Filter } from "./asked.js" */
/** @import { State } from "./address.js" */
/** @import { Data } from "./rows.js" */
import { button, element } from "../site/element.js";
import { all, part } from "../site/find.js";

/** @type {(words: string, heard: string, act: () => void) => HTMLElement} */
const chip = (words, heard, act) => {
  const item = element("li"), made = button("", act, "chip"), cross = element("span", "cross", "×");
  cross.setAttribute("aria-hidden", "true");
  made.append(element("span", "only-heard", heard), element("span", "", words), cross);
  item.append(made);
  return item;
};

/** What typed words chose, in words. @type {(data: Data, filter: Filter) => string} */
export const filterWords = (data, { text, values }) => {
  const words = values.map((value) => data.values[value].words).join(" or ");
  return words.toLowerCase() === text.toLowerCase() ? words : `“${text}”: ${words}`;
};

/**
 * @typedef {{ takeAway: (value: number) => void, unsay: (filter: Filter) => void, clear: () => void }} Acts `unsay` takes
 *   words that were typed out of the question
 * @type {(data: Data, list: HTMLElement, state: State, filters: Filter[], acts: Acts) => void}
 */
export const drawChips = (data, list, state, filters, { takeAway, unsay, clear }) => {
  /** @type {[words: string, act: () => void][]} */
  const chosen = [
    ...filters.map((filter) => /** @type {[string, () => void]} */ ([filterWords(data, filter), () => unsay(filter)])),
    ...state.order.map((value) => /** @type {[string, () => void]} */ ([data.values[value].words, () => takeAway(value)])),
  ];
  const chips = chosen.map(([words, act], place) => chip(words, "Take away: ", () => {
    act();
    const beside = all(list, ".chip", HTMLElement);
    (beside[Math.min(place, beside.length - 1)] ?? part(document, "#find-q", HTMLElement)).focus();
  }));
  if (chips.length > 1) {
    const item = element("li");
    item.append(button("Start again", clear));
    chips.push(item);
  }
  list.replaceChildren(...chips);
  list.hidden = chips.length === 0;
};
