/* Draws the hands of a clock where they have been put, and its face. */
/** @import { BoardData, State } from "./state.js" */
import { element } from "../site/element.js";
import { all, part } from "../site/find.js";

/** @type {(element: HTMLElement, turn: string | number | undefined) => void} */
const turnTo = ({ style }, turn) => style.setProperty("--turn", `${turn}deg`);

/**
 * What draws the hands; null where the board is no clock.
 * @type {(board: HTMLElement, data: BoardData, state: State) => (() => void) | null}
 */
export const openClock = (board, data, state) => {
  if (data.layout !== "clock") return null;
  const field = part(board, ".field", HTMLElement);
  field.classList.add("clock-face");
  for (let hour = 1; hour <= 12; hour += 1) {
    const number = element("span", "clock-number", String(hour));
    turnTo(number, hour * 30);
    field.append(number);
  }
  for (const place of all(field, ".place", HTMLElement)) turnTo(place, place.dataset.turn);
  const hands = data.pieces.map(({ id }) => {
    const hand = element("span", `hand ${id}`);
    hand.hidden = true;
    field.append(hand);
    return { id, hand };
  });
  return () => {
    for (const { id, hand } of hands) {
      const at = state.whereIs(id);
      hand.hidden = at === null;
      if (at !== null) turnTo(hand, state.place(at).turn);
    }
  };
};
