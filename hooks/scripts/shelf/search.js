/* Finds every cheapest cover by branch and bound, the textbook method of set covering. */

/**
 * @typedef {{ covers: number[], minutes: number }} Choice which rows a choice covers
 * @typedef {{ tries: number, ways: number }} Caps the most steps, and the most ways that are kept
 * @typedef {{ ways: number[][], more: boolean, proved: boolean }} Found places in the list of choices; whether there
 *   are more ways than were kept; false when the search was given up before it had seen all
 */

/** @type {(one: readonly number[], other: readonly number[]) => number} */
const inTurn = (one, other) => one[0] - other[0] || one[1] - other[1];

/** A cover to begin with: again and again what covers most. @type {(rows: number, choices: Choice[]) => number[]} */
const greedy = (rows, choices) => {
  const open = new Set(Array(rows).keys()), taken = [];
  while (open.size) {
    const gains = choices.map(({ covers }) => covers.filter((row) => open.has(row)).length);
    taken.push(gains.indexOf(Math.max(...gains)));
    choices[taken[taken.length - 1]].covers.forEach((row) => open.delete(row));
  }
  return taken;
};

/**
 * Every cheapest cover of the rows 0 to `rows` − 1: fewest choices first, then fewest minutes. Some choice covers each.
 *
 * A step takes the row with the fewest choices left and tries each in turn. Each row still open costs at least its
 * share of the choice that would share itself among most: what must be spent so is the bound.
 * @type {(rows: number, choices: Choice[], caps: Caps) => Found}
 */
export const search = (rows, choices, caps) => {
  const first = greedy(rows, choices), aside = choices.map(() => false), over = Array(rows).fill(0);
  const found = { ways: /** @type {number[][]} */ ([]), more: false, proved: true };
  let best = [first.length, first.reduce((sum, place) => sum + choices[place].minutes, 0)], tries = 0;

  /** @type {(cost: number[], taken: number[]) => void} */
  const note = (cost, taken) => {
    if (inTurn(cost, best) < 0) Object.assign(found, { ways: [], more: false });
    best = cost;
    if (found.ways.length < caps.ways) found.ways.push(taken);
    else found.more = true;
  };

  /** @type {(taken: number[], minutes: number) => void} */
  const visit = (taken, minutes) => {
    tries += 1;
    if (tries > caps.tries) found.proved = false;
    if (!found.proved) return;
    const gain = choices.map(() => 0), coverers = over.map(() => /** @type {number[]} */ ([]));
    choices.forEach(({ covers }, place) => {
      if (!aside[place]) for (const row of covers) if (!over[row]) { gain[place] += 1; coverers[row].push(place); }
    });
    const open = coverers.filter((_, row) => !over[row]);
    let books = taken.length, longest = minutes, fewest = open[0];
    for (const at of open) {
      let most = 0, least = Infinity;
      for (const place of at) {
        most = Math.max(most, gain[place]);
        least = Math.min(least, choices[place].minutes / gain[place]);
      }
      books += 1 / most;
      longest += least;
      if (at.length < fewest.length) fewest = at;
    }
    const least = [Math.ceil(books - 1e-9), Math.ceil(longest - 1e-9)];
    if (least[0] > best[0] || (least[0] === best[0] && least[1] > best[1] - (found.more ? 1 : 0))) return;
    if (!open.length) return note(least, taken);
    fewest.sort((a, b) => gain[b] - gain[a] || choices[a].minutes - choices[b].minutes || a - b);
    for (const place of fewest) {
      choices[place].covers.forEach((row) => { over[row] += 1; });
      visit([...taken, place], minutes + choices[place].minutes);
      choices[place].covers.forEach((row) => { over[row] -= 1; });
      aside[place] = true;
    }
    fewest.forEach((place) => { aside[place] = false; });
  };

  visit([], 0);
  if (!found.ways.length) found.ways.push(first);
  return found;
};
