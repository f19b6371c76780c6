/* What stands where on a board, in words. */
/** @import { BoardData, Place, State } from "./state.js" */

/** @type {(names: string[]) => string} */
const counted = (names) => (
  new Set(names).size === 1 && names.length > 1 ? `${names.length} ${names[0]}` : names.join(", "));

/** @type {(data: BoardData, state: Pick<State, "standing">) => string} */
export const tell = (data, state) => {
  /** @type {(place: Place) => string[]} */
  const names = (place) => state.standing(place.id).map(({ name }) => name);
  /** @type {(place: Place | undefined) => string} */
  const named = (place) => (place ? names(place).join(", ") || "…" : "");
  if (data.layout === "sentence") return data.between.map((words, n) => words + named(data.places[n])).join("");
  const filled = data.places.filter((place) => names(place).length);
  if (data.layout === "clock") return filled.map((place) => place.name).join(", ");
  if (data.layout === "slots") return filled.map(named).join("; ");
  return filled.map((place) => `${place.name}: ${counted(names(place))}`).join("; ");
};
