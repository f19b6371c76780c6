/* A school's own holidays, one a line, as 2027-02-15..2027-02-19 Half term. Keeps to parse/holiday_lines.py. */
(() => {
  const { weeks } = window.storymaths;
  const NO_NAME = "No school", LONGEST = 366, JOIN = "..";
  const JOINED = 'Two days of one line are joined by ".." with no space: 2027-02-15..2027-02-19.';
  const stripped = (words) => words.replace(/^[ \t]+|[ \t]+$/g, "");

  const read = (said, line, column) => {
    const [, days, name] = /^([^ \t]*)[ \t]?(.*)$/su.exec(said);
    const second = name.search(/[0-9]{4}-[0-9]{2}-[0-9]{2}/);
    if (second >= 0) return { line, column: column + [...days, ...name.slice(0, second)].length + 1, why: JOINED };
    const at = days.indexOf(JOIN), first = at < 0 ? days : days.slice(0, at);
    const start = weeks.dayOf(first);
    if (start.why) return { line, column, why: start.why };
    const end = at < 0 ? start : weeks.dayOf(days.slice(at + JOIN.length));
    if (end.why) return { line, column: column + first.length + JOIN.length, why: end.why };
    if (end.day < start.day) {
      return { line, column, why: `It ends on ${weeks.iso(end.day)}, before it starts on ${weeks.iso(start.day)}.` };
    }
    const long = end.day - start.day + 1;
    if (long > LONGEST) return { line, column, why: `It is ${long} days long, which is more than a year.` };
    const named = name.replace(/[\x00-\x1f\x7f]/g, " ").replace(/^ +| +$/g, "");
    return { first: start.day, last: end.day, name: named || NO_NAME };
  };

  /* The holidays of a text as { first, last, name }, and the lines that could not be read as { line, column, why }. */
  weeks.readHolidays = (text) => {
    const found = { holidays: [], unread: [] };
    text.replace(/^\ufeff/, "").split(/\r\n|\n|\r/).forEach((line, n) => {
      const said = stripped(line);
      if (!said || said.startsWith("#")) return;
      const one = read(said, n + 1, line.indexOf(said) + 1);
      (one.why ? found.unread : found.holidays).push(one);
    });
    return found;
  };
})();
