/* Says how well an idea answers what was asked, and why, in words. */
/** @import { State } from "./address.js" */
/** @import { Data, Idea } from "./rows.js" */
/** @import { Hit } from "./text.js" */
import { distance, standsIn, wordsOf } from "./words.js";

const IN_TITLE = 3000, IN_NAMES = 2000, IN_TEXT = 1000;
/** @type {WeakMap<Data, { title: string, all: string }[]>} */
const known = new WeakMap();

/**
 * The words of titles, and of the names that go with them, in small letters; made on the first search.
 * @type {(data: Data) => { title: string, all: string }[]}
 */
const namesOf = (data) => {
  const names = known.get(data) ?? data.ideas.map((idea) => {
    const concepts = idea.concepts.map((concept) => data.columns.concepts[concept][1]);
    const all = [idea.title, data.ideas[idea.book].title, ...concepts].join(" · ").toLowerCase();
    return { title: idea.title.toLowerCase(), all };
  });
  known.set(data, names);
  return names;
};

/**
 * For each row how well its names and its text answer the words; null when there are none.
 * @type {(data: Data, q: string, found: Map<number, Pick<Hit, "rank">>) => Float64Array | null}
 */
export const wordScores = (data, q, found) => {
  const words = wordsOf(q);
  if (!words.length) return null;
  const scores = new Float64Array(data.ideas.length);
  namesOf(data).forEach(({ title, all }, row) => {
    if (words.every((word) => standsIn(title, word))) scores[row] = IN_TITLE;
    else if (words.every((word) => standsIn(all, word))) scores[row] = IN_NAMES;
  });
  for (const [row, { rank: place }] of found) {
    const late = Math.min(place, 900);
    scores[row] += scores[row] ? 1 - late / 1000 : IN_TEXT - late;
  }
  return scores;
};

/** @type {(data: Data, state: State, facet: string) => number[]} */
const chosenOf = (data, state, facet) => state.order.filter((value) => data.values[value].name === facet);

/**
 * The idea's own concepts that a chosen value covers, in the author's order: the first is what it is most about.
 * @type {(data: Data, idea: Idea, chosen: number[]) => number[]}
 */
const conceptsMet = (data, idea, chosen) => (
  idea.concepts.filter((concept) => data.line[concept].some((value) => chosen.includes(value)))
);

/** Rows, best first. @type {(data: Data, rows: number[], state: State, scores: Float64Array | null) => number[]} */
export const rank = (data, rows, state, scores) => {
  const concepts = chosenOf(data, state, "concept"), years = chosenOf(data, state, "year");
  /** @type {(row: number) => number} */
  const worth = (row) => {
    const idea = data.ideas[row], year = data.number.get(`year:${idea.year}`);
    let points = scores ? scores[row] * 10 : 0;
    if (year !== undefined && years.includes(year)) points += 3;
    const met = concepts.length ? conceptsMet(data, idea, concepts) : [];
    if (met.length) points += met[0] === idea.concepts[0] ? 4 : 2;
    return points;
  };
  const points = new Map(rows.map((row) => [row, worth(row)]));
  return rows.sort((a, b) => Number(points.get(b)) - Number(points.get(a)) || a - b);
};

/** @type {(data: Data, row: number, value: number) => boolean} */
const has = (data, row, value) => data.has.subarray(data.first[row], data.first[row + 1]).includes(value);

/** @type {(scores: Float64Array | null, row: number) => boolean} */
export const inTitle = (scores, row) => scores !== null && scores[row] >= IN_TITLE;

/**
 * Why an idea is here, in short pieces; nothing when nothing was asked.
 * @type {(data: Data, idea: Idea, state: State, scores: Float64Array | null) => string[]}
 */
export const reasons = (data, idea, state, scores) => {
  const told = [];
  const concepts = conceptsMet(data, idea, chosenOf(data, state, "concept"));
  const names = concepts.slice(0, 3).map((concept) => data.columns.concepts[concept][1].toLowerCase());
  if (names.length) told.push(`${idea.verb} ${names.join(", ")}`);
  for (const value of state.order) {
    const { name, words } = data.values[value];
    if (name === "concept" || name === "kind" || name === "book" || !has(data, idea.row, value)) continue;
    if (name === "theme") told.push(`a story of ${words.toLowerCase()}`);
    else if (name === "minutes") told.push(`${idea.minutes} minutes`);
    else told.push(name === "year" ? words : words.toLowerCase());
  }
  if (inTitle(scores, idea.row)) told.push("words in the title");
  else if (scores && scores[idea.row] >= IN_NAMES) told.push("words in its book or concepts");
  return told;
};

/**
 * Words near to one that was not found: titles' and concepts' words that differ by a letter or two.
 * @type {(data: Data, q: string) => string[]}
 */
export const nearWords = (data, q) => {
  const all = new Set(namesOf(data).flatMap(({ all: names }) => names.split(/[^\p{L}]+/u)));
  /** @type {[string, number][]} */
  const near = [...all].filter((word) => word.length > 3).map((word) => [word, distance(q.toLowerCase(), word)]);
  return near.filter(([word, far]) => far <= (word.length > 6 ? 2 : 1)).sort((a, b) => a[1] - b[1]).slice(0, 3)
    .map(([word]) => word);
};
