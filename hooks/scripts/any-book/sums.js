/* What the numbers that a reader finds in a book come to, in sentences. A build has its examples worked out by this too. */

/** @typedef {[one: string, many: string]} Noun what is counted, in the singular and the plural */
/** @typedef {(numbers: number[], nouns: Noun[]) => string[]} Sum the sentences, the answer first */

/** @type {(count: number, noun: Noun | undefined) => string} */
const counted = (count, noun) => (noun ? `${count} ${count === 1 ? noun[0] : noun[1]}` : String(count));

/** @type {(one: string) => string} */
const capital = (one) => one.charAt(0).toUpperCase() + one.slice(1);

/** @type {(numbers: number[]) => number} */
const total = (numbers) => numbers.reduce((sum, one) => sum + one, 0);

/** @type {(numbers: number[]) => string} */
const added = (numbers) => `${numbers.join(" + ")} = ${total(numbers)}`;

/** @type {(many: number, number: number) => number[]} */
const times = (many, number) => Array.from({ length: many }, () => number);

/** @type {(hour: number) => number} */
const onTheClock = (hour) => ((hour - 1) % 12) + 1;

/** @type {{ [name: string]: Sum }} */
const SUMS = {
  "there-and-back": ([way = 0], [thing]) => [
    `${counted(way, thing)} there and ${way} back: ${2 * way} in all.`, `${way} + ${way} = ${2 * way}. Double ${way} is ${2 * way}.`,
  ],

  difference: ([before = 0, after = 0], [thing]) => {
    const by = Math.abs(after - before);
    if (!by) return [`It is ${counted(before, thing)} both times: the same.`];
    return after > before
      ? [`${counted(by, thing)} more.`, `Count on from ${before} to ${after}: ${before} + ${by} = ${after}.`]
      : [`${counted(by, thing)} fewer.`, `Count back from ${before} to ${after}: ${before} − ${by} = ${after}.`];
  },

  share: ([things = 0, sharers = 1], [thing, who]) => {
    const each = Math.floor(things / sharers), left = things % sharers;
    const over = left ? `${counted(left, thing)} ${left === 1 ? "is" : "are"} left over.` : "Nothing is left over.";
    if (!each) {
      const short = sharers - things;
      return [`There are not enough for one each: ${short} more would do it.`, `${things} + ${short} = ${sharers}.`];
    }
    return [`${counted(each, thing)} for each of the ${counted(sharers, who)}. ${over}`,
      `${added(times(sharers, each))}${left ? `, and ${each * sharers} + ${left} = ${things}` : ""}.`];
  },

  gather: (numbers, [thing]) => {
    const so = numbers.map((_, at) => total(numbers.slice(0, at + 1)));
    return [`${counted(total(numbers), thing)} in the end.`, `${added(numbers)}. Page by page: ${so.join(", ")}.`];
  },

  hidden: ([all = 0, seen = 0], [thing]) => {
    if (seen > all) return [`You can see more than there are in all. Count once more: ${seen} is more than ${all}.`];
    const hidden = all - seen;
    return [hidden ? `${counted(hidden, thing)} ${hidden === 1 ? "is" : "are"} hidden.` : "None are hidden.", `${seen} + ${hidden} = ${all}.`];
  },

  hours: ([from = 12, to = 12]) => {
    const many = (to - from + 12) % 12 || 12, passed = Array.from({ length: many }, (_, at) => onTheClock(from + at + 1));
    return [`${counted(many, ["hour", "hours"])}, from ${from} o'clock to the next ${to} o'clock.`, `Count on from ${from}: ${passed.join(", ")}.`];
  },

  longer: ([first = 0, more = 0, again = 0], [thing]) => {
    const so = Array.from({ length: again + 1 }, (_, at) => first + at * more);
    return [`${counted(first + again * more, thing)} in the end.`, `${so.join(", ")}: ${more} more each time.`];
  },

  "two-places": ([things = 0]) => {
    const ways = Array.from({ length: things + 1 }, (_, here) => `${here} and ${things - here}`);
    return [`${counted(things + 1, ["way", "ways"])} in all.`, `${capital(ways.join(", "))}.`];
  },

  lots: ([lots = 0, each = 0], [, part]) => [
    `${counted(lots * each, part)} in all.`, `${added(times(lots, each))}. ${lots} lots of ${each}.`,
  ],

  order: (numbers, [thing]) => {
    const so = [...numbers].sort((one, other) => one - other), least = so[0] ?? 0, most = so[so.length - 1] ?? 0;
    return [`The fewest first: ${so.join(", ")}.`,
      most === least ? "They are all the same." : `From the fewest to the most it is ${counted(most - least, thing)} more: ${least} + ${most - least} = ${most}.`];
  },

  halfway: ([pages = 1]) => {
    const half = Math.floor(pages / 2);
    return pages % 2
      ? [`Page ${half + 1} is the middle one.`, `${half} pages before it and ${half} after it: ${half} + 1 + ${half} = ${pages}.`]
      : [`The middle is between page ${half} and page ${half + 1}.`, `${half} + ${half} = ${pages}. Half of ${pages} is ${half}.`];
  },

  refrain: ([round = 1, which = 1]) => {
    const rounds = Math.floor((which - 1) / round), place = which - rounds * round;
    const ends = Array.from({ length: Math.min(rounds, 10) }, (_, at) => (at + 1) * round);
    return [`Number ${which} is the same as number ${place}.`,
      rounds ? `A round ends at ${ends.join(", ")}${rounds > 10 ? " and so on" : ""}. Go on from ${rounds * round}: ${place} more is ${which}.` : "It is in the first round."];
  },
};

/**
 * What `numbers` come to, the answer first and how it is found after it.
 * @type {(sum: string, numbers: number[], nouns: Noun[]) => string[]}
 */
export const workOut = (sum, numbers, nouns) => (SUMS[sum] ?? (() => []))(numbers, nouns);
