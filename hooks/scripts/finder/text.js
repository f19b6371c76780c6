/* Looks words up in the text of the pages: in the text index, or, where that cannot run, in every page's questions. */
/** @import { Part } from "./asked.js" */
/** @import { Pieces } from "./words.js" */
import { at, fromStick } from "../site/address.js";
import { load } from "../site/load.js";
import { excerpt, rowsWith, standsIn } from "./words.js";

/**
 * @typedef {{ rank: number, story: boolean, excerpt: () => Promise<Pieces> }} Hit
 * @typedef {{ id: string, data: () => Promise<{ excerpt: string }> }} Result
 * @typedef {{
 *   options: (options: object) => Promise<void>, init: () => Promise<void>,
 *   search: (q: string) => Promise<{ results: Result[] } | null>,
 * }} Index as the text index's own script gives it
 * @typedef {{ rows: string, stories: Record<string, number> }} Joined which page of the index is which row
 */

/** @type {Map<string, { row: number, story: boolean }>} */
const marks = new Map();
/** @type {Promise<Index> | null} */
let index = null;

const openIndex = async () => {
  /** @type {[Index, unknown]} */
  const [pagefind, read] = await Promise.all([import(at("pagefind/pagefind.js")), load("text-rows")]);
  const joined = /** @type {Joined} */ (read);
  await pagefind.options({ excerptLength: 24 });
  await pagefind.init();
  joined.rows.split(",").forEach((mark, row) => marks.set(mark, { row, story: false }));
  for (const [mark, row] of Object.entries(joined.stories)) marks.set(mark, { row, story: true });
  return pagefind;
};

/** The index gives its words as HTML with <mark>; both parts are taken as text. @type {(html: string) => Pieces} */
const marked = (html) => html.split(/(<mark>.*?<\/mark>)/).filter(Boolean).map((part) => {
  const page = new DOMParser().parseFromString(`<p>${part.replaceAll(/<\/?mark>/g, "")}</p>`, "text/html");
  return [page.querySelector("p")?.textContent ?? "", part.startsWith("<mark>")];
});

/**
 * Whole words alone: of a word it does not know the index would take ever less, down to a letter, unless it stands in
 * quotes. A last word that is still being typed may go on, but what was typed must all be in what is found.
 * @type {(part: Part) => Promise<Map<number, Hit>>}
 */
const inIndex = async ({ text, last }) => {
  index ??= openIndex();
  const { search } = await index, found = new Map();
  let results = (await search(`"${text}"`))?.results ?? [];
  if (!results.length && last && text.length > 2) {
    results = (await search(text))?.results ?? [];
    const first = results.length ? marked((await results[0].data()).excerpt) : [];
    if (!first.some(([word, isMark]) => isMark && standsIn(word.toLowerCase(), text.toLowerCase()))) results = [];
  }
  results.forEach((result, rank) => {
    const where = marks.get(result.id.slice(result.id.lastIndexOf("_") + 1));
    if (where && !found.has(where.row)) {
      found.set(where.row, { rank, story: where.story, excerpt: async () => marked((await result.data()).excerpt) });
    }
  });
  return found;
};

/** @type {(part: Part) => Promise<Map<number, Hit>>} */
const inQuestions = async ({ text, last }) => {
  const questions = /** @type {string[]} */ (await load("questions"));
  /** @type {[number, Hit][]} */
  const hits = rowsWith(questions, text, last).map((row, rank) => (
    [row, { rank, story: false, excerpt: async () => excerpt(questions[row], [text]) }]));
  return new Map(hits);
};

/** Starts fetching what a first search needs. */
export const openText = () => {
  if (!fromStick) (index ??= openIndex()).catch(() => {});
};

/** For the words of each part the rows whose page has them, best first. @type {(parts: Part[]) => Promise<Map<string, Map<number, Hit>>>} */
export const findText = async (parts) => {
  /** @type {(part: Part) => Promise<[string, Map<number, Hit>]>} */
  const find = async (part) => [
    part.text, fromStick ? await inQuestions(part) : await inIndex(part).catch(() => inQuestions(part)),
  ];
  return new Map(await Promise.all(parts.map(find)));
};
