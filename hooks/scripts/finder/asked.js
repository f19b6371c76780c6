/* Understands a question: words that mean a concept or a theme, words that are filters, and words to look up as they are. */
/** @import { AskedWords, Data } from "./rows.js" */
import { ideaScore } from "./rank.js";

/**
 * @typedef {{ text: string, values: number[] }} Filter words as typed, and the values they choose
 * @typedef {{ text: string, values: number[], nearest: number[], last: boolean }} Part of what a page must be of: one of
 *   the values, the first meant most, or, where there are none, the words themselves; the last word may be half typed
 * @typedef {{ parts: Part[], filters: Filter[], pages: string[] }} Asked `pages` are names of pages of the whole collection that answer
 * @typedef {{ values: number[], nearest: number[], pages: string[] }} Meaning
 */

const LONGEST = 6; // words in a way of asking
const EDGES = /^[^\p{L}\p{N}=≠+−×÷<>%£½¼¾]+|[^\p{L}\p{N}=≠+−×÷<>%£½¼¾]+$/gu;
/** @type {WeakMap<Data, Map<string, Meaning>>} */
const known = new WeakMap();

/** @type {(text: string) => string} */
const keyOf = (text) => text.toLowerCase().replaceAll("’", "'").replaceAll(/[-–]/g, " ");

/**
 * What is meant without the idea that the first of it is a part of, where something is of that part itself: a lesson of the
 * wider idea may be of its other parts.
 * @type {(data: Data, values: number[]) => number[]}
 */
const narrowest = (data, [first, second, ...more]) => {
  const isPart = data.line.some((line) => line[0] === first && line.slice(1, -1).includes(second));
  return [first, ...(isPart && data.has.includes(first) ? [] : [second]), ...more].filter((value) => value !== undefined);
};

/** What each way of asking means; made on the first search. @type {(data: Data) => Map<string, Meaning>} */
export const meaningsOf = (data) => {
  const made = known.get(data) ?? new Map();
  if (made.size) return made;
  /** @type {(says: string, values: string, nearest?: string) => void} */
  const add = (says, values, nearest = "") => {
    /** @type {(names: string) => number[]} */
    const numbers = (names) => names.split(" ").flatMap((name) => {
      const either = name.startsWith("year:") ? [name, name.replace(":", ":b")] : [name];
      return either.flatMap((one) => data.number.get(one) ?? []);
    });
    const pages = values.split(" ").flatMap((name) => (name.startsWith("page:") ? [name.slice("page:".length)] : []));
    const meaning = { values: narrowest(data, numbers(values)), nearest: numbers(nearest), pages };
    if (!meaning.nearest.length) meaning.nearest = besides.get(values.split(" ")[0]) ?? [];
    if (meaning.values.length || pages.length) for (const words of says.split("|")) made.set(keyOf(words), meaning);
  };
  /** What to show where nothing is of an idea: what is said to be nearest, else all of its strand. @type {Map<string, number[]>} */
  const besides = new Map(data.columns.concepts.map(([id, , strand]) => (
    [`concept:${id}`, [data.number.get(`concept:strand-${data.columns.strands[strand][0]}`) ?? 0]])));
  for (const [, values, nearest] of data.asked.meanings) {
    const [first] = values.split(" ");
    if (nearest) besides.set(first, nearest.split(" ").flatMap((one) => data.number.get(one) ?? []));
  }
  data.columns.themes.forEach(([id, name]) => add(name, `theme:${id}`));
  data.columns.concepts.forEach(([id, name]) => add(name, `concept:${id}`));
  data.columns.years.forEach((name, year) => add(name, `year:${year}`));
  data.asked.meanings.forEach((meaning) => add(...meaning));
  known.set(data, made);
  return made;
};

/** Has questions understood by these words from now on. @type {(data: Data, words: AskedWords) => void} */
export const knowWords = (data, words) => {
  data.asked = words;
  known.delete(data);
};

/** What some words mean, in the singular or the plural. @type {(data: Data, key: string) => Meaning | undefined} */
const meaningOf = (data, key) => {
  const meanings = meaningsOf(data), minutes = new RegExp(`^(\\d+) ?(${data.asked.minutes})$`).exec(key);
  if (minutes) return { values: [data.spanOf(Number(minutes[1]))], nearest: [], pages: [] };
  return meanings.get(key) ?? meanings.get(`${key}s`) ?? (key.endsWith("s") ? meanings.get(key.slice(0, -1)) : undefined);
};

/** @type {(data: Data, q: string) => Asked} */
export const understand = (data, q) => {
  const words = q.split(/\s+/).map((word) => word.replaceAll(EDGES, "")).filter(Boolean);
  const over = new Set(data.asked.over.split(" "));
  /** @type {Asked} */
  const asked = { parts: [], filters: [], pages: [] };
  /** @type {(value: number) => boolean} */
  const isIdea = (value) => ["concept", "theme"].includes(data.values[value].name);
  for (let at = 0, taken = 1; at < words.length; at += taken) {
    /** @type {Meaning | undefined} */
    let meaning;
    for (taken = Math.min(LONGEST, words.length - at); taken > 0 && !meaning; taken -= 1) {
      meaning = meaningOf(data, keyOf(words.slice(at, at + taken).join(" ")));
    }
    taken += 1;
    const text = words.slice(at, at + taken).join(" ");
    const [ideas, filters] = [meaning?.values.filter(isIdea) ?? [], meaning?.values.filter((value) => !isIdea(value)) ?? []];
    asked.pages.push(...meaning?.pages ?? []);
    if (filters.length) asked.filters.push({ text, values: filters });
    if (ideas.length) asked.parts.push({ text, values: ideas, nearest: meaning?.nearest ?? [], last: false });
    if (!meaning && !over.has(text.toLowerCase())) {
      asked.parts.push({ text, values: [], nearest: [], last: at + 1 === words.length });
    }
  }
  if (words.length && !asked.parts.length && !asked.filters.length && !asked.pages.length) {
    asked.parts = words.map((text, at) => ({ text, values: [], nearest: [], last: at + 1 === words.length }));
  }
  return asked;
};

/** Whether nothing at all is of what a part means. @type {(data: Data, part: Part) => boolean} */
export const isUntaught = (data, { values }) => values.length > 0 && !data.ideas.some(({ row }) => ideaScore(data, row, values));

/** The parts whose words the text is asked for; a letter alone says too little. @type {(data: Data, q: string) => Part[]} */
export const partsForText = (data, q) => understand(data, q).parts.filter((part) => (
  part.values.length ? isUntaught(data, part) : !/^\p{L}$/u.test(part.text)));
