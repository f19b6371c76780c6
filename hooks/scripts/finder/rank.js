/* Says how well an idea answers what was asked, and why, in words. */
/** @import { State } from "./address.js" */
/** @import { Asked, Part } from "./asked.js" */
/** @import { Data, Idea } from "./rows.js" */
/** @import { Hit } from "./text.js" */
import { standsIn, wordStands } from "./words.js";

const IN_TITLE = 3000, IS_OF = 2500, IN_NAMES = 2000, IN_TEXT = 1000;
const OF_ITS_YEAR = 3000; // more than how early a concept is named, less than a word in the title, which is told in tenths
const BY_NAME = 100_000;
/** @typedef {ReadonlyMap<string, ReadonlyMap<number, Pick<Hit, "rank">>>} Found by words of the question: the rows whose text has them */
/** @type {WeakMap<Data, { title: string, all: string }[]>} */
const known = new WeakMap();

/** In small letters, with the apostrophe that keyboards have. @type {(text: string) => string} */
const asTyped = (text) => text.toLowerCase().replaceAll("’", "'");

/**
 * The words of titles, and of the names that go with them, in small letters; made on the first search.
 * @type {(data: Data) => { title: string, all: string }[]}
 */
export const namesOf = (data) => {
  const names = known.get(data) ?? data.ideas.map((idea) => {
    const concepts = idea.concepts.map((concept) => data.columns.concepts[concept][1]);
    return { title: asTyped(idea.title), all: asTyped([idea.title, data.ideas[idea.book].title, ...concepts].join(" · ")) };
  });
  known.set(data, names);
  return names;
};

/** @type {(data: Data, row: number, value: number) => boolean} */
const has = (data, row, value) => data.has.subarray(data.first[row], data.first[row + 1]).includes(value);

/**
 * How well a row is of what a part of the question means: best where its author named that very concept, and first.
 * @type {(data: Data, row: number, values: number[]) => number}
 */
export const ideaScore = (data, row, values) => Math.max(0, ...values.map((value, place) => {
  if (!has(data, row, value)) return 0;
  const own = data.ideas[row].concepts.map((concept) => data.line[concept]);
  const named = own.findIndex(([first]) => first === value), wider = own.findIndex((line) => line.includes(value));
  const isPart = named < 0 && wider >= 0;
  if (isPart && place) return 0; // what is meant besides may be wider than what is meant: another part of it is not
  return IS_OF - 50 * place - 20 * Math.max(0, named < 0 ? wider : named) - (isPart ? 150 : 0);
}));

/** @type {(data: Data, row: number, part: Part, hits: ReadonlyMap<number, Pick<Hit, "rank">> | undefined) => number} */
const partScore = (data, row, { text, values, last }, hits) => {
  const { title, all } = namesOf(data)[row], word = asTyped(text);
  const titled = wordStands(title, word);
  if (values.length) { // a title may play with a word; of what it says the concepts are the surer sign
    const of = ideaScore(data, row, values);
    return of ? of + (titled ? 100 : 0) : titled ? IN_NAMES : 0;
  }
  if (titled) return IN_TITLE;
  if (last && word.length > 2 && standsIn(title, word)) return IN_TITLE - 100;
  if (wordStands(all, word) || (last && word.length > 2 && standsIn(all, word))) return IN_NAMES;
  const place = hits?.get(row)?.rank;
  return place === undefined ? 0 : IN_TEXT - Math.min(place, 900);
};

/** The parts of a question that a row answers. @type {(data: Data, row: number, parts: Part[], found: Found) => Part[]} */
export const partsMet = (data, row, parts, found) => parts.filter((part) => partScore(data, row, part, found.get(part.text)));

/**
 * For each row how well it answers all parts of the question: as well as it does the worst of them; null for no parts.
 * @type {(data: Data, asked: Asked, found: Found) => Float64Array | null}
 */
export const wordScores = (data, { parts }, found) => {
  if (!parts.length) return null;
  return Float64Array.from(data.ideas, (_, row) => {
    const each = parts.map((part) => partScore(data, row, part, found.get(part.text)));
    const worst = Math.min(...each);
    return worst && worst + each.reduce((sum, one) => sum + one, 0) / parts.length / 10000;
  });
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

/**
 * Rows, best first. Where words are asked for, books come after what can be taught, except one that is asked for by name.
 * @type {(data: Data, rows: number[], state: State, scores: Float64Array | null) => number[]}
 */
export const rank = (data, rows, state, scores) => {
  const asked = asTyped(state.q), concepts = chosenOf(data, state, "concept"), years = chosenOf(data, state, "year");
  /** @type {(row: number) => number} */
  const worth = (row) => {
    const idea = data.ideas[row], year = data.number.get(`year:${idea.year}`);
    let points = scores ? scores[row] * 10 : 0;
    if (year !== undefined && years.includes(year)) points += scores ? OF_ITS_YEAR : 3;
    if (asked && asTyped(idea.title) === asked) points += BY_NAME;
    else if (asked && idea.card === "book-card") points -= BY_NAME;
    const met = concepts.length ? conceptsMet(data, idea, concepts) : [];
    if (met.length) points += met[0] === idea.concepts[0] ? 4 : 2;
    return points;
  };
  const points = new Map(rows.map((row) => [row, worth(row)]));
  const soonest = chosenOf(data, state, "minutes").length ? 1 : 0;
  return rows.sort((a, b) => Number(points.get(b)) - Number(points.get(a))
    || soonest * (data.ideas[a].minutes - data.ideas[b].minutes) || a - b);
};

/** @type {(scores: Float64Array | null, row: number) => boolean} */
export const inTitle = (scores, row) => scores !== null && scores[row] >= IN_TITLE;

/**
 * Why an idea is here, in short pieces; nothing when nothing was asked. `meant` are values that its words stand for.
 * @type {(data: Data, idea: Idea, state: State, scores: Float64Array | null, meant: number[]) => string[]}
 */
export const reasons = (data, idea, state, scores, meant) => {
  const told = [];
  const concepts = conceptsMet(data, idea, [...chosenOf(data, state, "concept"), ...meant]);
  const names = concepts.slice(0, 3).map((concept) => data.columns.concepts[concept][1].toLowerCase());
  if (names.length) told.push(`${idea.verb} ${names.join(", ")}`);
  for (const value of new Set([...state.order, ...meant])) {
    const { name, words } = data.values[value];
    if (name === "concept" || name === "kind" || name === "book" || !has(data, idea.row, value)) continue;
    if (name === "theme") told.push(`a story of ${words.toLowerCase()}`);
    else if (name === "minutes") told.push(`${idea.minutes} minutes`);
    else told.push(name === "year" ? words : words.toLowerCase());
  }
  if (inTitle(scores, idea.row)) told.push("in the title");
  else if (scores && scores[idea.row] >= IN_NAMES && !meant.length) told.push("in the name of its book or what it teaches");
  return told;
};
