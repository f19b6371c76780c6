/* Draws what is chosen as chips to take away. */
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

/** @type {(data: Data, list: HTMLElement, state: State, acts: { takeAway: (value: number) => void, clear: () => void }) => void} */
export const drawChips = (data, list, state, { takeAway, clear }) => {
  const chips = state.order.map((value, place) => chip(data.values[value].words, "Take away: ", () => {
    takeAway(value);
    const beside = all(list, "button", HTMLElement)[Math.min(place, state.order.length - 1)];
    (beside ?? part(document, "#find-q", HTMLElement)).focus();
  }));
  if (chips.length > 1) {
    const item = element("li");
    item.append(button("Start again", clear));
    chips.push(item);
  }
  list.replaceChildren(...chips);
  list.hidden = chips.length === 0;
};
