/* Adds up what the sessions of a plan need for a class, exactly as each session's own page does. */

/**
 * @typedef {[one: string, several: string, comesBack: number]} Material what it is called, and 1 if it is used again
 * @typedef {[title: string, book: string, year: number, minutes: number, groupSize: number, needed: number[],
 *   toPrint: string, pages: number]} Idea `needed` is thing, how many, for whom, again and again; a home activity has no
 *   group size; `toPrint` is the end of an address after the idea's name, or empty
 * @typedef {{ thing: number, each: number[], all: number, enough: number, name: string }} Sum
 */

const CLASS = 0, GROUP = 1, PAIR = 2;

/**
 * How many for a class of so many: a part of a pair or group counts whole.
 * @type {(count: number, per: number, children: number, groupSize: number) => number}
 */
const forClass = (count, per, children, groupSize) => {
  const size = per === CLASS ? Math.max(children, 1) : per === GROUP ? groupSize : per === PAIR ? 2 : 1;
  return count * Math.ceil(children / size);
};

/** What one idea needs, as thing → how many. @type {(idea: Idea, children: number) => Map<number, number>} */
const neededBy = ([, , , , groupSize, needed], children) => {
  const things = new Map();
  for (let at = 0; at < needed.length; at += 3) {
    const [thing, count, per] = needed.slice(at, at + 3);
    things.set(thing, (things.get(thing) ?? 0) + (groupSize ? forClass(count, per, children, groupSize) : count));
  }
  return things;
};

/**
 * For each thing of some ideas: `each`, how many every idea needs; `all`, those added up; and `enough`, what to have
 * when the ideas are taught one after another: of things that come back the most at one time, of the rest all.
 * @type {(materials: Material[], ideas: Idea[], children: number) => Sum[]}
 */
export const addUp = (materials, ideas, children) => {
  /** @type {Map<number, Omit<Sum, "name">>} */
  const sums = new Map();
  ideas.forEach((idea, place) => {
    for (const [thing, count] of neededBy(idea, children)) {
      const sum = sums.get(thing) ?? { thing, each: ideas.map(() => 0), all: 0, enough: 0 };
      sum.each[place] = count;
      sum.all += count;
      sum.enough = materials[thing][2] ? Math.max(sum.enough, count) : sum.all;
      sums.set(thing, sum);
    }
  });
  return [...sums.values()].map((sum) => ({ ...sum, name: materials[sum.thing][sum.all === 1 ? 0 : 1] }))
    .sort((a, b) => a.name.localeCompare(b.name, "en-GB"));
};
