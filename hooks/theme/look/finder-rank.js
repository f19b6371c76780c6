/* Says how well an idea answers what was asked, and why, in words. */
(() => {
  const { finder } = window.storymaths;
  const IN_TITLE = 3000, IN_NAMES = 2000, IN_TEXT = 1000;

  /* The words of titles, and of the names that go with them, in small letters; made on the first search. */
  const namesOf = (data) => (data.names ??= data.ideas.map((idea) => {
    const concepts = idea.concepts.map((concept) => data.columns.concepts[concept][1]);
    const all = [idea.title, data.ideas[idea.book].title, ...concepts].join(" · ").toLowerCase();
    return { title: idea.title.toLowerCase(), all };
  }));

  /* For each row how well its names and its text answer the words; null when there are none. */
  finder.wordScores = (data, q, found) => {
    const words = finder.wordsOf(q);
    if (!words.length) return null;
    const scores = new Float64Array(data.ideas.length);
    namesOf(data).forEach(({ title, all }, row) => {
      if (words.every((word) => finder.standsIn(title, word))) scores[row] = IN_TITLE;
      else if (words.every((word) => finder.standsIn(all, word))) scores[row] = IN_NAMES;
    });
    for (const [row, { rank }] of found) {
      const late = Math.min(rank, 900);
      scores[row] += scores[row] ? 1 - late / 1000 : IN_TEXT - late;
    }
    return scores;
  };

  const chosenOf = (data, state, facet) => state.order.filter((value) => data.values[value].name === facet);

  /* The idea's own concepts that a chosen value covers, in the author's order: the first is what it is most about. */
  const conceptsMet = (data, idea, chosen) => (
    idea.concepts.filter((concept) => data.line[concept].some((value) => chosen.includes(value)))
  );

  finder.rank = (data, rows, state, scores) => {
    const concepts = chosenOf(data, state, "concept"), years = chosenOf(data, state, "year");
    const worth = (row) => {
      const idea = data.ideas[row];
      let points = scores ? scores[row] * 10 : 0;
      if (years.length) points += years.includes(data.number.get(`year:${idea.year}`)) ? 3 : 0;
      const met = concepts.length ? conceptsMet(data, idea, concepts) : [];
      if (met.length) points += met[0] === idea.concepts[0] ? 4 : 2;
      return points;
    };
    const points = new Map(rows.map((row) => [row, worth(row)]));
    return rows.sort((a, b) => points.get(b) - points.get(a) || a - b);
  };

  const has = (data, row, value) => {
    for (let at = data.first[row]; at < data.first[row + 1]; at += 1) if (data.has[at] === value) return true;
    return false;
  };

  finder.inTitle = (scores, row) => scores?.[row] >= IN_TITLE;

  /* Why an idea is here, in short pieces; nothing when nothing was asked. */
  finder.reasons = (data, idea, state, scores) => {
    const told = [];
    const concepts = conceptsMet(data, idea, chosenOf(data, state, "concept"));
    const names = concepts.slice(0, 3).map((concept) => data.columns.concepts[concept][1].toLowerCase());
    if (names.length) told.push(`${idea.verb} ${names.join(", ")}`);
    for (const value of state.order) {
      const { name, words } = data.values[value];
      if (name === "concept" || name === "kind" || name === "book" || !has(data, idea.row, value)) continue;
      if (name === "theme") told.push(`a story of ${words.toLowerCase()}`);
      else if (name === "minutes") told.push(`${idea.minutes} minutes`);
      else told.push(name === "year" ? words : words.toLowerCase());
    }
    if (finder.inTitle(scores, idea.row)) told.push("words in the title");
    else if (scores?.[idea.row] >= IN_NAMES) told.push("words in its book or concepts");
    return told;
  };

  /* Words near to one that was not found: titles' and concepts' words that differ by a letter or two. */
  finder.nearWords = (data, q) => {
    const known = new Set(namesOf(data).flatMap(({ all }) => all.split(/[^\p{L}]+/u)));
    const near = [...known].filter((word) => word.length > 3).map((word) => [word, distance(q.toLowerCase(), word)])
      .filter(([word, far]) => far <= (word.length > 6 ? 2 : 1));
    return near.sort((a, b) => a[1] - b[1]).slice(0, 3).map(([word]) => word);
  };

  /* How many letters must change, come or go to make one word of the other. */
  const distance = (one, two) => {
    if (Math.abs(one.length - two.length) > 2) return 9;
    let row = Array.from({ length: two.length + 1 }, (_, n) => n);
    for (let i = 1; i <= one.length; i += 1) {
      const next = [i];
      for (let j = 1; j <= two.length; j += 1) {
        const changed = one[i - 1] === two[j - 1] ? 0 : 1;
        next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + changed);
      }
      row = next;
    }
    return row[two.length];
  };
})();
