/* What stands where on a board, in words. */
/** @import { BoardData, Piece, Place, State } from "./state.js" */

/** Those alike are counted; one counter is named by its number alone, for its name is that of several. @type {(pieces: Piece[]) => string} */
const counted = (pieces) => {
  const [first] = pieces, alike = pieces.every(({ id }) => id === first.id);
  if (alike && pieces.length > 1) return `${pieces.length} ${first.name}`;
  return first.look === "counter" ? "1" : pieces.map(({ name }) => name).join(", ");
};

const MOST_NAMED = 8;

/** Squares or points by their names; of many, how many there are. @type {(places: Place[], layout: string) => string} */
const listed = (places, layout) => (places.length > MOST_NAMED ? `${places.length} ${layout}` : places.map(({ name }) => name).join(", "));

/** @type {(data: BoardData, state: Pick<State, "standing">) => string} */
export const tell = (data, state) => {
  /** @type {(place: Place) => string[]} */
  const names = (place) => state.standing(place.id).map(({ name }) => name);
  /** @type {(place: Place | undefined) => string} */
  const named = (place) => (place ? names(place).join(", ") || "…" : "");
  if (data.layout === "sentence") return data.between.map((words, n) => words + named(data.places[n])).join("");
  const filled = data.places.filter((place) => names(place).length);
  if (data.layout === "clock") return filled.map((place) => place.name).join(", ");
  const alike = new Set(data.pieces.map(({ name }) => name)).size === 1 && data.pieces[0].look !== "card";
  if (["squares", "points"].includes(data.layout) && alike) return listed(filled, data.layout);
  if (data.layout === "slots") return filled.map(named).join("; ");
  return filled.map((place) => `${place.name}: ${counted(state.standing(place.id))}`).join("; ");
};
