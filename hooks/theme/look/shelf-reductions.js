/* Makes the choice of a shelf smaller without losing an answer: step by step as covers/shelf_reductions.py does. */
(() => {
  /* The rows of `covers` that are in `rows`, as sets of numbers in order. */
  const within = (covers, rows) => covers.filter((row) => rows.has(row));
  const isPartOf = (few, many) => few.every((one) => many.includes(one));

  /* The choices as `rows` sees them: those that cover none are gone, and like ones are one. */
  const merged = (rows, choices) => {
    const like = new Map();
    for (const { covers, minutes, books } of choices) {
      const left = within(covers, rows);
      if (!left.length) continue;
      const key = `${left} ${minutes}`, known = like.get(key);
      if (known) known.books.push(...books);
      else like.set(key, { covers: left, minutes, books: [...books] });
    }
    for (const choice of like.values()) choice.books.sort((a, b) => a - b);
    return [...like.values()];
  };

  /* For each row the places of the choices that cover it. */
  const coverersOf = (rows, choices) => {
    const found = new Map([...rows].map((row) => [row, []]));
    choices.forEach((choice, place) => choice.covers.forEach((row) => found.get(row).push(place)));
    return found;
  };

  /* Rows covered whenever another row is; of rows covered by the same choices all but the first. */
  const implied = (coverers) => {
    const gone = new Set(), all = [...coverers];
    for (const [row, at] of all) {
      const by = all.some(([other, theirs]) => other !== row && !gone.has(other) && theirs.length <= at.length
        && isPartOf(theirs, at) && (theirs.length < at.length || other < row));
      if (by) gone.add(row);
    }
    return gone;
  };

  /* Whether another choice covers as much in strictly fewer minutes. In as many it may be in a tie, and stays. */
  const isBeaten = (choice, choices) => choices.some(
    (other) => other.minutes < choice.minutes && isPartOf(choice.covers, other.covers));

  /* The choices every answer makes, the rows still to cover, and the choices among which to search. */
  window.storymaths.reducedShelf = (all, choices) => {
    const rows = new Set(all), needed = [];
    let left = merged(rows, choices);
    for (;;) {
      const coverers = coverersOf(rows, left);
      const only = new Set([...coverers.values()].filter((at) => at.length === 1).map(([place]) => place));
      if (only.size) {
        needed.push(...left.filter((_, place) => only.has(place)));
        for (const place of only) left[place].covers.forEach((row) => rows.delete(row));
        left = merged(rows, left.filter((_, place) => !only.has(place)));
        continue;
      }
      const gone = implied(coverers), kept = left.filter((choice) => !isBeaten(choice, left));
      if (!gone.size && kept.length === left.length) return { needed, rows, left };
      gone.forEach((row) => rows.delete(row));
      left = merged(rows, kept);
    }
  };
})();
