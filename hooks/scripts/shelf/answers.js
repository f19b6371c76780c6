/* The answers for the books a reader owns, in words: what they cover, what one more would add, the fewest to buy. */
/** @import { Caps } from "./search.js" */
/** @import { ShelfBook } from "./sums.js" */
import { at } from "../site/address.js";
import { element, link } from "../site/element.js";
import { bestNext, shortest, taughtBy } from "./sums.js";

/**
 * @typedef {[id: string, title: string, address: string]} BookNamed
 * @typedef {[code: string, says: string, address: string]} Objective an objective, or a part of one
 * @typedef {{ name: string, year: number, in_part: number, beyond: number, objectives: Objective[], books: ShelfBook[] }}
 *   YearQuestion `in_part` and `beyond` are how many objectives all books together teach only in part, or not at all
 */

/** @type {(number: number, one: string, several?: string) => string} */
const many = (number, one, several = `${one}s`) => `${number} ${number === 1 ? one : several}`;

/** @type {(minutes: number) => string} */
const hours = (minutes) => [many(Math.floor(minutes / 60), "hour"), many(minutes % 60, "minute")]
  .filter((words) => !words.startsWith("0 ")).join(" ");

/** With commas between, and "and" before the last. @type {<Item>(nodes: Item[]) => (Item | string)[]} */
const listed = (nodes) => nodes.flatMap((node, n) => {
  if (!n) return [node];
  return [n === nodes.length - 1 ? " and " : ", ", node];
});

/** @type {(heading: string, ...nodes: Node[]) => HTMLElement} */
const part = (heading, ...nodes) => {
  const made = element("div", "shelf-part");
  made.append(element("h3", "", heading), ...nodes);
  return made;
};

/** @type {(...nodes: (Node | string)[]) => HTMLElement} */
const sentence = (...nodes) => {
  const made = element("p");
  made.append(...nodes);
  return made;
};

/** @type {(items: (Node | string)[][], className?: string) => HTMLElement} */
const list = (items, className = "lines") => {
  const made = element("ul", className);
  made.append(...items.map((nodes) => {
    const item = element("li");
    item.append(...nodes);
    return item;
  }));
  return made;
};

/** @type {(places: Iterable<number>) => number[]} */
const inOrder = (places) => [...places].sort((a, b) => a - b);

/**
 * The parts of the answer for one question; `books` is every book by its id.
 * @type {(question: YearQuestion, owned: ReadonlySet<string>, books: Map<string, BookNamed>, caps: Caps & { shown: number })
 *   => HTMLElement[]}
 */
export const shelfAnswers = (question, owned, books, caps) => {
  /** @type {(place: number) => HTMLElement} */
  const book = (place) => {
    const [id, title, address] = books.get(question.books[place][0]) ?? ["", "", ""];
    return link(at(address), title || id);
  };
  /** Places by the objective they are of. @type {(places: Iterable<number>) => [HTMLElement, string[]][]} */
  const byObjective = (places) => {
    /** @type {Map<string, number[]>} */
    const found = new Map();
    for (const place of inOrder(places)) {
      const [code] = question.objectives[place];
      found.set(code, [...found.get(code) ?? [], place]);
    }
    return [...found].map(([code, parts]) => (
      [link(at(question.objectives[parts[0]][2]), code, "code"), parts.map((place) => question.objectives[place][1])]));
  };
  const covered = inOrder(taughtBy(question, owned)), whole = question.objectives.length;

  const have = () => {
    const ours = question.books.filter(([id]) => owned.has(id)).length;
    const all = `The books here teach ${many(whole, "thing")} of the year, counting each part of an objective. `;
    const told = `${all}${ours ? `Yours teach ${covered.length} of them.` : "None of the books you have ticked teaches any of them."}`;
    const fold = element("details"), lines = byObjective(covered).map(([code, parts]) => [code, ` ${parts.join("; ")}.`]);
    fold.append(element("summary", "", "Which they are"), list(lines));
    return part("What your books teach", sentence(told), ...(covered.length ? [fold] : []));
  };

  const next = () => {
    const gains = bestNext(question, owned), [first] = gains;
    if (!first) return part("One more book", sentence("No other book here would add anything new."));
    const adds = many(first[1].length, "more thing");
    const opening = gains.length === 1 ? `This book would add most, ${adds}:` : `Each of these would add ${adds}:`;
    const items = gains.slice(0, caps.shown).map(([place, objectives]) => [
      book(place), ", on ", ...listed(byObjective(objectives).map(([code]) => code)),
    ]);
    const rest = gains.length > caps.shown ? [element("p", "note", `The first ${caps.shown} of ${gains.length} are listed.`)] : [];
    return part("One more book", sentence(opening), list(items), ...rest);
  };

  const buy = () => {
    const answer = shortest(question, owned, caps), count = answer.ways.length;
    if (!answer.books) return part("The fewest to buy", sentence("None: your books already teach everything that the books here teach of this year."));
    const told = [`${many(answer.books, "book")}, ${hours(answer.minutes)}, would teach all the rest of what the books here teach.`];
    if (answer.more) told.push(` There are more than ${count} ways to choose, each as short as the others.`);
    else if (count > 1) told.push(` There are ${count} ways to choose, each as short as the others.`);
    if (!answer.proved) told.push(" The search was given up before it had seen everything: there may be a shorter shelf.");
    const ways = list(answer.ways.slice(0, caps.shown).map((way) => listed(way.map(book))), "shelf-ways");
    const rest = count > caps.shown ? [element("p", "note", `The first ${caps.shown} are listed.`)] : [];
    return part("The fewest to buy", sentence(...told), ways, ...rest);
  };

  const beyond = () => {
    const page = question.year ? `coverage/year-${question.year}.html` : "coverage/reception.html";
    const gaps = question.beyond ? [`${many(question.beyond, "objective")} of the year ${question.beyond === 1 ? "is" : "are"} in no book here`] : [];
    const parts = question.in_part ? [`${many(question.in_part, "objective")} ${question.in_part === 1 ? "is" : "are"} taught only in part`] : [];
    const told = `${[...gaps, ...parts].join(", and ")}. `;
    return told === ". " ? [] : [sentence(told, link(at(page), "See which, and what is missing"), ".")];
  };

  return [have(), next(), buy(), ...beyond()];
};
