/* Tilts a beam by what is really on it. The sums show only while the adult's notes do. */
/** @import { Notes } from "../screen/notes.js" */
/** @import { BoardData, Place, State } from "./state.js" */
import { element } from "../site/element.js";
import { part } from "../site/find.js";

const MOST = 9, LEAST = 3; // degrees

/**
 * How far a beam leans for what is on its sides, in degrees, to the right.
 * @type {(left: number, right: number) => number}
 */
export const tiltOf = (left, right) => {
  if (left === right) return 0;
  const lean = Math.abs((right - left) / Math.max(left, right) * MOST);
  return Math.sign(right - left) * Math.max(LEAST, Math.min(MOST, lean));
};

/**
 * `words` says a try as a number sentence; null where the board is no beam.
 * @type {(board: HTMLElement, data: BoardData, state: State, notes: Notes) => { refresh: () => void, words: () => string } | null}
 */
export const openBeam = (board, data, state, notes) => {
  if (data.layout !== "beam") return null;
  const field = part(board, ".field", HTMLElement), beam = element("div", "beam"), sums = element("p", "sums");
  const areWeights = data.pieces.some(({ look }) => look === "weight"); // their names tell what they weigh
  beam.setAttribute("role", "img");
  field.prepend(beam);
  sums.hidden = true;
  field.append(sums);
  notes.onTurn((shown) => { sums.hidden = areWeights || !shown; });
  /** @type {(place: Place) => number} */
  const worth = (place) => state.standing(place.id).reduce((sum, piece) => sum + piece.worth, 0);

  const refresh = () => {
    const [left, right] = data.places.map(worth);
    field.style.setProperty("--tilt", `${tiltOf(left, right)}deg`);
    field.dataset.tilt = String(Math.sign(right - left));
    beam.setAttribute("aria-label", left === right ? "The beam is level." : `The ${left > right ? "left" : "right"} side is down.`);
    sums.textContent = `${left} and ${right}`;
  };
  const words = () => {
    /** @type {(place: Place) => string} */
    const side = (place) => state.standing(place.id).map((piece) => piece.worth).join(" + ") || "0";
    /** @type {(place: Place) => string} */
    const names = (place) => state.standing(place.id).map((piece) => piece.name).join(", ") || "nobody";
    const [left, right] = data.places, sign = worth(left) === worth(right) ? "=" : "≠";
    if (areWeights) return [left, right].map(({ id }) => state.standing(id).map(({ name }) => name).join(" + ") || "nothing").join(` ${sign} `);
    return `${side(left)} ${sign} ${side(right)} (${names(left)}; ${names(right)})`;
  };
  return { refresh, words };
};
