/* Words a reader types, and where they stand in text. */

/** @typedef {[text: string, isMark: boolean][]} Pieces text in pieces, each with whether it is what was asked for */

/**
 * Whether a word begins somewhere in text that is in small letters.
 * @type {(lower: string, word: string) => boolean}
 */
export const standsIn = (lower, word) => {
  for (let at = lower.indexOf(word); at >= 0; at = lower.indexOf(word, at + 1)) {
    if (at === 0 || !/[\p{L}\p{N}]/u.test(lower[at - 1])) return true;
  }
  return false;
};

/** @type {Map<string, string[]>} */
const forms = new Map();

/** A word as typed, and in the singular. @type {(word: string) => string[]} */
const formsOf = (word) => {
  const known = forms.get(word);
  if (known) return known;
  const single = word.length > 3 ? [word.replace(/(?<=s|x|ch|sh)es$|(?<!s)s$/u, ""), word.replace(/ies$/u, "y")] : [];
  const made = [...new Set([word, ...single])];
  forms.set(word, made);
  return made;
};

/**
 * Whether a whole word stands in text that is in small letters, in the singular or the plural.
 * @type {(lower: string, word: string) => boolean}
 */
export const wordStands = (lower, word) => formsOf(word).some((form) => {
  for (let at = lower.indexOf(form); at >= 0; at = lower.indexOf(form, at + 1)) {
    if (at > 0 && /[\p{L}\p{N}]/u.test(lower[at - 1])) continue;
    if (/^(s|es|'s|’s)?(?![\p{L}\p{N}])/u.test(lower.slice(at + form.length, at + form.length + 4))) return true;
  }
  return false;
});

/**
 * The rows whose text has a word, or the last word of a question, which may be half typed.
 * @type {(texts: string[], word: string, last: boolean) => number[]}
 */
export const rowsWith = (texts, word, last) => {
  const lower = word.toLowerCase(), all = texts.map((text) => text.toLowerCase());
  /** @type {(stands: (text: string, word: string) => boolean) => number[]} */
  const where = (stands) => all.flatMap((text, row) => (stands(text, lower) ? [row] : []));
  const whole = where(wordStands);
  return whole.length || !last || lower.length < 3 ? whole : where(standsIn);
};

/**
 * Text cut where any of some words begins, and the place of the first, or −1.
 * @type {(text: string, words: string[]) => { at: number, pieces: Pieces }}
 */
export const cutAt = (text, words) => {
  const any = words.map((word) => word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("|");
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(${any})`, "giu");
  return { at: text.search(pattern), pieces: text.split(pattern).map((part, n) => [part, n % 2 === 1]) };
};

/**
 * Some words either side of the first match, with every match marked.
 * @type {(text: string, words: string[]) => Pieces}
 */
export const excerpt = (text, words) => {
  const at = Math.max(0, cutAt(text, words).at);
  const from = at < 60 ? 0 : text.lastIndexOf(" ", at - 40) + 1, to = text.indexOf(" ", at + 100);
  return cutAt(text.slice(from, to < 0 ? undefined : to), words).pieces;
};

/**
 * How many letters must change, come or go to make one word of the other.
 * @type {(one: string, two: string) => number}
 */
export const distance = (one, two) => {
  if (Math.abs(one.length - two.length) > 2) return 9;
  let row = Array.from({ length: two.length + 1 }, (_, n) => n);
  for (let i = 1; i <= one.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= two.length; j += 1) {
      const changed = one[i - 1] === two[j - 1] ? 0 : 1;
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + changed);
    }
    row = next;
  }
  return row[two.length];
};
