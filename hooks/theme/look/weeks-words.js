/* What a plan says of itself, and its rows to read. Keeps to weeks/words.py and weeks/rows.py. */
(() => {
  const { weeks } = window.storymaths;
  const FREE = "Left free";
  const counted = (number, one) => `${number} ${number === 1 ? one : `${one}s`}`;
  const taught = (plan) => plan.days.filter(({ part }) => part);
  const weekIn = (plan, day) => weeks.week(day) - weeks.week(plan.days[0].day) + 1;

  const cut = (plan) => {
    const books = new Map();
    for (const { day, part } of taught(plan)) {
      const { book, bookTitle } = part.lesson;
      books.set(book, { title: bookTitle, first: books.get(book)?.first ?? day, last: day });
    }
    return [...books.values()].map(({ title, first, last }) => [title, weeks.week(last) - weeks.week(first)])
      .filter(([, weekends]) => weekends);
  };

  const unknown = (plan, first, last) => {
    const { known } = plan.asked;
    if (!known || (known[0] <= weeks.year(first) && weeks.year(last) <= known[1])) return [];
    return [`Bank holidays are known here from ${known[0]} to ${known[1]}: add those of other years to your own days.`];
  };

  const sentences = (plan) => {
    const on = taught(plan), first = on[0].day, last = on.at(-1).day, weekends = cut(plan);
    const lessons = new Set(on.map(({ part }) => part.lesson)).size;
    const free = plan.days.filter(({ part, holiday }) => !part && holiday === null).length;
    const split = new Set(on.filter(({ part }) => part.of > 1).map(({ part }) => part.lesson)).size;
    const said = [`${counted(lessons, "session")} on ${counted(on.length, "day")}, `
      + `from ${weeks.inWords(first)} to ${weeks.inWords(last)}.`];
    said.push(...weekends.map(([title, number]) => `“${title}” has ${counted(number, "weekend")} in it.`));
    if (!weekends.length) said.push("No book is cut by a weekend.");
    if (free) {
      said.push(`${counted(free, "day")} ${free === 1 ? "is" : "are"} left free, so that weekends cut books less.`);
    }
    if (split) {
      const longer = `longer than ${counted(plan.asked.minutes, "minute")}`;
      said.push(`${counted(split, "session")} ${split === 1 ? "is" : "are"} ${longer} and split at the end of a step.`);
    }
    return [...said, ...unknown(plan, first, last)];
  };

  /* Rows as { week, when, part, why }: one a day, and one a stretch of days without a lesson for one reason. */
  const rows = (plan) => {
    const stretches = [];
    for (const { day, part, holiday } of plan.days) {
      const before = stretches.at(-1), week = weekIn(plan, day);
      if (before && before.week === week && !part && !before.part && before.holiday === holiday) before.last = day;
      else stretches.push({ week, first: day, last: day, part, holiday });
    }
    return stretches.map(({ week, first, last, part, holiday }) => {
      const ends = first === last ? [first] : [first, last];
      const when = ends.map((day) => weeks.inWords(day, false)).join(" to ");
      return { week, when, part, why: part ? "" : holiday ?? FREE };
    });
  };

  Object.assign(weeks, {
    counted,
    taught,
    weekIn,
    sentences,
    rows,
    nameOf: ({ lesson, number, of }) => lesson.title + (of > 1 ? ` (part ${number} of ${of})` : ""),
    stepsInWords: ({ steps }) => steps.map(([name, minutes]) => `${name}, ${counted(minutes, "minute")}`).join("; "),
  });
})();
