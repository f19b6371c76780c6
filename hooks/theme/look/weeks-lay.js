/* Lays lessons on school days, so that weekends cut books as little as can be. Keeps to weeks/lay.py and weeks/plan.py. */
(() => {
  const { weeks } = window.storymaths;
  const sum = (steps) => steps.reduce((minutes, [, more]) => minutes + more, 0);

  /* Steps in runs, each as long as the minutes allow before the next begins. */
  const filled = (steps, minutes) => {
    const runs = [[]];
    let left = minutes;
    for (const step of steps) {
      if (step[1] > left && runs.at(-1).length) {
        runs.push([]);
        left = minutes;
      }
      runs.at(-1).push(step);
      left -= step[1];
    }
    return runs;
  };

  /* As few days as can be; of those ways the one with the shortest longest part, its earlier parts longest. */
  const partsOf = (lesson, minutes) => {
    const fewest = filled(lesson.steps, minutes).length;
    let longest = Math.max(...lesson.steps.map(([, long]) => long));
    while (filled(lesson.steps, longest).length > fewest) longest += 1;
    const runs = filled(lesson.steps, longest);
    return runs.map((steps, n) => ({ lesson, steps, number: n + 1, of: runs.length, minutes: sum(steps) }));
  };

  /* The place of each book's first day: fewest weekends inside books, then soonest done, then each begun soonest. */
  const lay = (needed, weekOf) => {
    const CANNOT = [Infinity, Infinity], starts = [];
    let after = Array.from({ length: weekOf.length + 1 }, (_, day) => [0, day - 1]);
    for (const days of [...needed].reverse()) {
      const best = Array(weekOf.length + 1).fill(CANNOT), begins = Array(weekOf.length + 1).fill(weekOf.length);
      for (let day = weekOf.length - days; day >= 0; day -= 1) {
        const [weekends, last] = after[day + days], later = best[day + 1];
        const now = [weekends + weekOf[day + days - 1] - weekOf[day], last];
        const sooner = now[0] < later[0] || (now[0] === later[0] && now[1] <= later[1]);
        [best[day], begins[day]] = sooner ? [now, day] : [later, begins[day + 1]];
      }
      after = best;
      starts.unshift(begins);
    }
    let day = 0;
    return needed.map((days, book) => {
      const start = starts[book][day];
      day = start + days;
      return start;
    });
  };

  /* Where no day is left free, each book begins as the one before it ends. */
  const atOnce = (needed) => needed.map((_, book) => needed.slice(0, book).reduce((all, days) => all + days, 0));

  const byBook = (parts) => {
    const books = [];
    for (const part of parts) {
      if (books.at(-1)?.[0].lesson.book === part.lesson.book) books.at(-1).push(part);
      else books.push([part]);
    }
    return books;
  };

  weeks.lessonsOf = (data) => data.lessons.map(([book, bookTitle, number, title, reads, address, flat]) => {
    const steps = flat.filter((_, n) => n % 2 === 0).map((name, n) => [name, flat[2 * n + 1]]);
    return { book, bookTitle, number, title, reads, address, steps };
  });

  /*
   * The plan as { asked, days }: every chosen weekday from the first to the last lesson's as { day, part, holiday }.
   * Asked for are `start`, `minutes`, `days` (0 Monday to 4 Friday), `holidays`, `known` years, `waits` and `ofClass`.
   */
  weeks.plan = (lessons, asked) => {
    const holidayOn = (day) => asked.holidays.find(({ first, last }) => first <= day && day <= last)?.name ?? null;
    const books = byBook(lessons.flatMap((lesson) => partsOf(lesson, asked.minutes)));
    const needed = books.map((book) => book.length);
    const over = needed.reduce((all, days) => all + Math.ceil(days / asked.days.length) + 1, 1);
    const end = asked.holidays.reduce((last, holiday) => Math.max(last, holiday.last), asked.start) + 7 * over;
    const chosen = [];
    for (let day = asked.start; day <= end; day += 1) if (asked.days.includes(weeks.weekday(day))) chosen.push(day);
    const school = chosen.filter((day) => holidayOn(day) === null);
    const on = new Map();
    const places = asked.waits ? lay(needed, school.map(weeks.week)) : atOnce(needed);
    places.forEach((start, n) => {
      books[n].forEach((part, place) => on.set(school[start + place], part));
    });
    const last = Math.max(...on.keys());
    const days = chosen.filter((day) => day <= last);
    return { asked, days: days.map((day) => ({ day, part: on.get(day) ?? null, holiday: holidayOn(day) })) };
  };
})();
