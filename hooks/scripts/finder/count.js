/* Counts in one pass what fits, what each value would leave, and what comes nearest when nothing fits. */
/** @import { Data } from "./rows.js" */

/**
 * @typedef {{
 *   fitting: number[], left: Uint32Array, more: Uint32Array, needed: number, near: [row: number, lacking: number][],
 * }} Counted `left` says for each value how many fitting rows have it; `more` how many would join if it were chosen
 *   beside others of its facet; facets are bits of `needed` and of what the nearest lack
 */

/** @type {(mask: number) => number} */
const bits = (mask) => {
  let count = 0;
  for (let rest = mask; rest; rest &= rest - 1) count += 1;
  return count;
};

/**
 * `chosen` marks the chosen values; `asked` marks the rows whose words fit, or is null when no words are asked for.
 * A row fits when it has any chosen value of each facet that has one.
 * @type {(data: Pick<Data, "values" | "first" | "has" | "ideas">, chosen: Uint8Array, asked: Float64Array | null) => Counted}
 */
export const count = ({ values, first, has, ideas }, chosen, asked) => {
  const left = new Uint32Array(values.length), more = new Uint32Array(values.length);
  const facetOf = Uint8Array.from(values, (value) => value.facet);
  /** @type {number[]} */
  const fitting = [];
  /** @type {[number, number][]} */
  let near = [];
  let needed = 0, nearest = 99;
  values.forEach((value, n) => { if (chosen[n]) needed |= 1 << value.facet; });
  for (let row = 0; row < ideas.length; row += 1) {
    if (asked && !asked[row]) continue;
    let met = 0;
    for (let at = first[row]; at < first[row + 1]; at += 1) if (chosen[has[at]]) met |= 1 << facetOf[has[at]];
    const lacking = needed & ~met;
    if (lacking === 0) {
      fitting.push(row);
      for (let at = first[row]; at < first[row + 1]; at += 1) left[has[at]] += 1;
      continue;
    }
    const lacks = bits(lacking);
    if (lacks === 1) {
      for (let at = first[row]; at < first[row + 1]; at += 1) {
        if (1 << facetOf[has[at]] === lacking) more[has[at]] += 1;
      }
    }
    if (lacks < nearest) { nearest = lacks; near = []; }
    if (lacks === nearest) near.push([row, lacking]);
  }
  return { fitting, left, more, needed, near: fitting.length ? [] : near };
};
