/* Looks words up in the text of the pages: in the text index, or, where that cannot run, in every page's questions. */
/** @import { Pieces } from "./words.js" */
import { at, fromStick } from "../site/address.js";
import { load } from "../site/load.js";
import { excerpt, standsIn, wordsOf } from "./words.js";

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

/** @type {(q: string) => Promise<Map<number, Hit>>} */
const inIndex = async (q) => {
  index ??= openIndex();
  const found = new Map();
  const results = (await (await index).search(q))?.results ?? [];
  results.forEach((result, rank) => {
    const where = marks.get(result.id.slice(result.id.lastIndexOf("_") + 1));
    if (where && !found.has(where.row)) {
      found.set(where.row, { rank, story: where.story, excerpt: async () => marked((await result.data()).excerpt) });
    }
  });
  return found;
};

/** @type {(q: string) => Promise<Map<number, Hit>>} */
const inQuestions = async (q) => {
  const questions = /** @type {string[]} */ (await load("questions"));
  const words = wordsOf(q), found = new Map();
  questions.forEach((text, row) => {
    const lower = ` ${text.toLowerCase()}`;
    if (words.every((word) => standsIn(lower, word))) {
      found.set(row, { rank: found.size, story: false, excerpt: async () => excerpt(text, words) });
    }
  });
  return found;
};

/** Starts fetching what a first search needs. */
export const openText = () => {
  if (!fromStick) (index ??= openIndex()).catch(() => {});
};

/** Rows whose page has the words, best first. @type {(q: string) => Promise<Map<number, Hit>>} */
export const findText = async (q) => {
  if (fromStick) return inQuestions(q);
  try {
    return await inIndex(q);
  } catch {
    return inQuestions(q);
  }
};
