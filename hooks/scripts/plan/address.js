/* A plan as an address, to send: its ideas with commas between. */

const BOOKS = "books/"; // the folder all books share is left out of addresses; what stands elsewhere begins with a stroke

/** @type {(name: string) => string} */
const longName = (name) => (name.startsWith("/") ? name.slice(1) : name.split("/").length === 2 ? BOOKS + name : name);

/** The names of the ideas of a plan in the words of an address. @type {(words: string) => string[]} */
export const namesIn = (words) => words.split(",").filter(Boolean).map(longName);

/** What stands after the name of the page. @type {(names: string[]) => string} */
export const addressOf = (names) => {
  const short = names.map((name) => (name.startsWith(BOOKS) ? name.slice(BOOKS.length) : `/${name}`));
  return `plan.html?plan=${short.map(encodeURIComponent).join(",").replaceAll("%2F", "/")}`;
};
