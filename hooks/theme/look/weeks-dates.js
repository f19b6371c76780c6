/* Days as numbers, counted from 1 January 1970, so that no time zone can move them; weeks begin on Monday. */
(() => {
  const FIRST_YEAR = 2000, LAST_YEAR = 2099, DAY = 86400000, DAYS_FROM_MONDAY = 3; // the first day was a Thursday
  const NAMES = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
  const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December"];
  const inCalendar = (day) => new Date(day * DAY);

  /* A day written 2027-02-15 as { day }, or else { why } it cannot be used. */
  const dayOf = (words) => {
    const match = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/.exec(words);
    if (!match) return { why: `"${words}" is not a day written like 2027-02-15.` };
    const [year, month, date] = match.slice(1).map(Number);
    if (year < FIRST_YEAR || year > LAST_YEAR) {
      return { why: `"${words}" is not in the years ${FIRST_YEAR} to ${LAST_YEAR}.` };
    }
    const day = Date.UTC(year, month - 1, date) / DAY;
    return iso(day) === words ? { day } : { why: `"${words}" is not a day of the calendar.` };
  };
  const iso = (day) => inCalendar(day).toISOString().slice(0, 10);
  const weekday = (day) => (day + DAYS_FROM_MONDAY) % 7;

  (window.storymaths ??= {}).weeks = {
    dayOf,
    iso,
    weekday,
    week: (day) => Math.floor((day + DAYS_FROM_MONDAY) / 7),
    year: (day) => inCalendar(day).getUTCFullYear(),
    dayName: (day) => NAMES[weekday(day)],
    inWords: (day, year = true) => {
      const date = inCalendar(day);
      const words = `${NAMES[weekday(day)]} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
      return year ? `${words} ${date.getUTCFullYear()}` : words;
    },
  };
})();
