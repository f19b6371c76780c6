/* What is said above what was found: which words had to be let go of, and why there is nothing. */
/** @import { Answer } from "./answer.js" */
/** @import { Part } from "./asked.js" */
/** @import { Data } from "./rows.js" */
import { FACETS } from "./rows.js";

const YEAR = 1 << FACETS.findIndex(([name]) => name === "year");

/** @type {(parts: Part[]) => string} */
const listed = (parts) => parts.map(({ text }) => `“${text}”`).join(" and ");

/** Words that were let go of before anything was found, to stand before how many there are; or "". @type {(answer: Answer) => string} */
export const tellWithout = ({ without, untaught }) => {
  if (!without.length) return "";
  const lacking = without.filter((part) => untaught.includes(part)), rest = without.filter((part) => !lacking.includes(part));
  const none = lacking.length ? `No lesson on ${listed(lacking)} yet. ` : "";
  return `${none}${rest.length ? `Nothing has all of the words. Without ${listed(rest)}: ` : "Without it: "}`;
};

/** Why nothing is found. @type {(data: Data, answer: Answer) => string} */
export const tellNone = (data, { asked, absent: [absent], counted, now, untaught: [lacking] }) => {
  if (asked.pages.length && !asked.parts.length && !now.order.length) return "That has a page of its own.";
  if (lacking) return `No lesson on ${lacking.text} yet.`;
  if (absent) return `Nothing here has the word “${absent.text}” yet.`;
  if (!counted.near.length || counted.near.some(([, lacks]) => lacks !== YEAR)) return "Nothing has all of that.";
  const years = now.order.map((value) => data.values[value]).filter(({ name, bend }) => name === "year" && bend === undefined);
  return `${asked.parts.length ? "Nothing of that" : "No lesson"} is for ${years.map(({ words }) => words).join(" or ")} yet.`;
};
