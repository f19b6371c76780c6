/*
 * Books laid on school days, so that weekends cut them as little as can be.
 *
 * A book takes some days one after another. Leaving days free before it may spare it a weekend in the middle; this finds
 * the laying with the fewest weekends inside books, of those the one that ends first, and of those the one in which each
 * book in turn begins first. It is exact: every laying is weighed, by working back from the last book.
 */

/**
 * The place of each book's first day. `needed` says how many days each book takes, in order, each at least one; `weeks`
 * is the week each school day is in, in order. There must be days enough for all. A book from Thursday to the Monday
 * after next has two weekends in it: holidays between make a cut worse.
 * @type {(needed: number[], weeks: number[]) => number[]}
 */
export const lay = (needed, weeks) => {
  /** @type {number[][]} */
  const starts = [];
  /* From each day on: how many weekends at least, and then how soon the last day. */
  let after = Array.from({ length: weeks.length + 1 }, (_, day) => [0, day - 1]);
  for (const days of [...needed].reverse()) {
    const best = Array(weeks.length + 1).fill([Infinity, Infinity]), begins = Array(weeks.length + 1).fill(weeks.length);
    for (let day = weeks.length - days; day >= 0; day -= 1) {
      const [weekends, last] = after[day + days], later = best[day + 1];
      const now = [weekends + weeks[day + days - 1] - weeks[day], last];
      const sooner = now[0] < later[0] || (now[0] === later[0] && now[1] <= later[1]);
      [best[day], begins[day]] = sooner ? [now, day] : [later, begins[day + 1]];
    }
    after = best;
    starts.unshift(begins);
  }
  let day = 0;
  return needed.map((days, book) => {
    const start = starts[book][day];
    day = start + days;
    return start;
  });
};

/** Where no day is left free, each book begins as the one before it ends. @type {(needed: number[]) => number[]} */
export const atOnce = (needed) => needed.map((_, book) => needed.slice(0, book).reduce((all, days) => all + days, 0));
