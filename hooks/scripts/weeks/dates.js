/* Days as numbers, counted from 1 January 1970, so that no time zone can move them; weeks begin on Monday. */

const FIRST_YEAR = 2000, LAST_YEAR = 2099, DAY = 86400000, DAYS_FROM_MONDAY = 3; // the first day was a Thursday
const NAMES = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
  "November", "December"];

/** @type {(day: number) => Date} */
const inCalendar = (day) => new Date(day * DAY);

/** A day as 2027-02-15. @type {(day: number) => string} */
export const iso = (day) => inCalendar(day).toISOString().slice(0, 10);

/** @typedef {{ day: number, why: null } | { day: null, why: string }} Read a day, or why it cannot be used */

/** @type {(why: string) => Read} */
const refused = (why) => ({ day: null, why });

/**
 * The parts of a day as written; a part that is left out may stand in the other day of a stretch (15 to 19 Feb 2027).
 * @typedef {{ date: number, month: number | null, year: number | null, weekday: number | null, words: string }} Parts
 */

const WEEKDAY = /(?<weekday>mon|tue|wed|thu|fri|sat|sun)[a-z]*[.,]*[ \t]+/;
const WAYS = [
  /(?<y1>[0-9]{4})-(?<m1>[0-9]{2})-(?<d1>[0-9]{2})/,
  /(?<d2>[0-9]{1,2})(?<sign>[/.])(?<m2>[0-9]{1,2})(?:\k<sign>(?<y2>[0-9]{4}|[0-9]{2}))?/,
  /(?<d3>[0-9]{1,2})(?:st|nd|rd|th)?(?:[ \t]+(?:of[ \t]+)?(?<month>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?,?(?:[ \t]+(?<y3>[0-9]{4}))?)?/,
];
const WRITTEN = new RegExp(`^(?:${WEEKDAY.source})?(?:${WAYS.map((way) => way.source).join("|")})(?![0-9A-Za-z/])`, "i");

/** @type {(names: string[], start: string | undefined) => number | null} */
const placeOf = (names, start) => (start ? names.findIndex((name) => name.toLowerCase().startsWith(start.toLowerCase())) : null);

/** The day that words begin with: 2027-02-15, 15/02/2027, 15/2/27, Mon 15 Feb 2027. @type {(words: string) => Parts | null} */
export const readParts = (words) => {
  const match = WRITTEN.exec(words), said = match?.groups;
  if (!match || !said) return null;
  const [y, m] = [said.y1 ?? said.y2 ?? said.y3, said.m1 ?? said.m2], month = placeOf(MONTHS, said.month);
  return {
    date: Number(said.d1 ?? said.d2 ?? said.d3),
    month: m ? Number(m) : month === null ? null : month + 1,
    year: y ? Number(y.length < 3 ? `20${y}` : y) : null,
    weekday: placeOf(NAMES, said.weekday),
    words: match[0],
  };
};

/** The day that parts make. @type {(parts: Parts) => Read} */
export const dayOfParts = ({ date, month, year, weekday: named, words }) => {
  if (month === null) return refused(`"${words}" is not a day written like 15/02/2027 or 15 February 2027.`);
  if (year === null) return refused(`"${words}" does not say its year.`);
  if (year < FIRST_YEAR || year > LAST_YEAR) return refused(`"${words}" is not in the years ${FIRST_YEAR} to ${LAST_YEAR}.`);
  const day = Date.UTC(year, month - 1, date) / DAY, found = inCalendar(day);
  if (found.getUTCMonth() !== month - 1 || found.getUTCDate() !== date) return refused(`"${words}" is not a day of the calendar.`);
  return named === null || named === weekday(day) ? { day, why: null } : refused(`${inWords(day)} is not a ${NAMES[named]}.`);
};

/** The day that words are. @type {(words: string) => Read} */
export const dayOf = (words) => {
  const parts = readParts(words);
  return parts && parts.words === words ? dayOfParts(parts) : refused(`"${words}" is not a day written like 15/02/2027 or 2027-02-15.`);
};

/** From 0 for Monday. @type {(day: number) => number} */
export const weekday = (day) => (day + DAYS_FROM_MONDAY) % 7;

/** The number of a day's week: each is one more than the one before. @type {(day: number) => number} */
export const weekOf = (day) => Math.floor((day + DAYS_FROM_MONDAY) / 7);

/** @type {(day: number) => number} */
export const yearOf = (day) => inCalendar(day).getUTCFullYear();

/** @type {(day: number) => string} */
export const dayName = (day) => NAMES[weekday(day)];

/** A day as people write it: Monday 11 January 2027. @type {(day: number, year?: boolean) => string} */
export const inWords = (day, year = true) => {
  const date = inCalendar(day), words = `${dayName(day)} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
  return year ? `${words} ${date.getUTCFullYear()}` : words;
};
