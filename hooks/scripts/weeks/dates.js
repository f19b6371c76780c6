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

/** A day written 2027-02-15. @type {(words: string) => Read} */
export const dayOf = (words) => {
  const match = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/.exec(words);
  if (!match) return refused(`"${words}" is not a day written like 2027-02-15.`);
  const [year, month, date] = match.slice(1).map(Number);
  if (year < FIRST_YEAR || year > LAST_YEAR) return refused(`"${words}" is not in the years ${FIRST_YEAR} to ${LAST_YEAR}.`);
  const day = Date.UTC(year, month - 1, date) / DAY;
  return iso(day) === words ? { day, why: null } : refused(`"${words}" is not a day of the calendar.`);
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
