/* What the books a reader owns cover, what one more would add most, and the fewest to buy. */
/** @import { Caps } from "./search.js" */
import { search } from "./search.js";

/**
 * @typedef {[id: string, minutes: number, teaches: number[]]} ShelfBook
 * @typedef {{ books: ShelfBook[], objectives: readonly unknown[] }} Question books teach objectives, by their places
 * @typedef {{ books: number, minutes: number, ways: number[][], more: boolean, proved: boolean }} Shelf
 *   every way to choose the books, as places in the question's; whether there are more than were kept; false when the
 *   search was given up, and there may be a shorter shelf
 */

/** @type {(question: Question, owned: Iterable<string>) => Set<number>} */
export const taughtBy = ({ books }, owned) => {
  const ids = new Set(owned);
  return new Set(books.filter(([id]) => ids.has(id)).flatMap(([, , teaches]) => teaches));
};

/** Two lists of numbers, the smaller first. @type {(one: number[], other: number[]) => number} */
const inOrder = (one, other) => {
  const at = one.findIndex((number, place) => number !== other[place]);
  return at < 0 ? one.length - other.length : one[at] - (other[at] ?? -1);
};

/**
 * The fewest books to add so that all is taught that the books can teach; then the fewest minutes. Exact, with every
 * tie, unless the search needs more than `caps.tries` steps.
 * @type {(question: Question, owned: Iterable<string>, caps: Caps) => Shelf}
 */
export const shortest = (question, owned, caps) => {
  const { books } = question, ids = new Set(owned), have = taughtBy(question, ids);
  const others = books.filter(([id]) => !ids.has(id));
  const wanted = question.objectives.flatMap((_, place) => (have.has(place) ? [] : [place]));
  const row = new Map(wanted.map((place, n) => [place, n]));
  const choices = others.map(([, minutes, teaches]) => (
    { minutes, covers: teaches.flatMap((place) => row.get(place) ?? []) }));
  const found = search(row.size, choices, caps);
  const ways = found.ways.map((way) => way.map((place) => books.indexOf(others[place])).sort((a, b) => a - b));
  const minutes = ways[0].reduce((sum, place) => sum + books[place][1], 0);
  return { ...found, books: ways[0].length, minutes, ways: ways.sort(inOrder) };
};

/**
 * The books that would add most, all of them, the shortest first: their places in the question's books, and what each
 * would add.
 * @type {(question: Question, owned: Iterable<string>) => [place: number, adds: number[]][]}
 */
export const bestNext = (question, owned) => {
  const ids = new Set(owned), have = taughtBy(question, ids);
  const gains = question.books.map(([id, minutes, teaches], place) => ({
    place, minutes, adds: ids.has(id) ? [] : teaches.filter((objective) => !have.has(objective)),
  }));
  const most = Math.max(1, ...gains.map(({ adds }) => adds.length));
  return gains.filter(({ adds }) => adds.length === most).sort((a, b) => a.minutes - b.minutes || a.place - b.place)
    .map(({ place, adds }) => [place, adds]);
};
