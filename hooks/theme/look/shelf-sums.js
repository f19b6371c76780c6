/* What the books a reader owns cover, what one more would add most, and the fewest to buy: as covers/shelf.py says. */
(() => {
  const { reducedShelf, searchShelf } = window.storymaths;

  /* Two lists of numbers, the smaller first. */
  const inOrder = (one, other) => {
    const at = one.findIndex((number, place) => number !== other[place]);
    return at < 0 ? one.length - other.length : one[at] - (other[at] ?? -1);
  };

  /* Ways with each choice among like books made in turn, the last choice fastest; no more than `most`. */
  const speltOut = (ways, most) => {
    const told = [];
    const choose = (way, at, taken) => {
      if (told.length > most) return;
      if (at === way.length) told.push([...taken].sort((a, b) => a - b));
      else way[at].books.forEach((book) => choose(way, at + 1, [...taken, book]));
    };
    ways.forEach((way) => choose(way, 0, []));
    return told;
  };

  /* A question is `{ books: [[id, minutes, objectives]], objectives }`; `owned` is the ids of books. */
  const taughtBy = (question, owned) => new Set(
    question.books.filter(([id]) => owned.has(id)).flatMap(([, , teaches]) => teaches));

  window.storymaths.shelf = {
    taughtBy,

    /* The fewest books to add: `{ books, minutes, ways, more, proved }`, a way being places in the question's books. */
    shortest: (question, owned, caps) => {
      const have = taughtBy(question, owned), all = question.objectives.map((_, place) => place);
      const codes = all.filter((place) => !have.has(place))
        .sort((a, b) => (question.objectives[a][0] < question.objectives[b][0] ? -1 : 1));
      const row = new Map(codes.map((place, number) => [place, number]));
      const choices = question.books.flatMap(([id, minutes, teaches], place) => (owned.has(id) ? [] : [{
        covers: teaches.filter((objective) => row.has(objective)).map((objective) => row.get(objective)).sort((a, b) => a - b),
        minutes,
        books: [place],
      }]));
      if (!codes.length) return { books: 0, minutes: 0, ways: [[]], more: false, proved: true };
      const { needed, rows, left } = reducedShelf(codes.map((_, number) => number), choices);
      const found = searchShelf(rows, left, caps);
      const ways = found.ways.map((way) => [...needed, ...way.map((place) => left[place])]);
      const told = speltOut(ways, caps.ways);
      return {
        books: ways[0].length,
        minutes: ways[0].reduce((sum, choice) => sum + choice.minutes, 0),
        ways: told.slice(0, caps.ways).sort(inOrder),
        more: found.more || told.length > caps.ways,
        proved: found.proved,
      };
    },

    /* The books that would add most, all of them, the shortest first: `[place in the question's books, objectives]`. */
    bestNext: (question, owned) => {
      const have = taughtBy(question, owned);
      const gains = question.books.map(([id, minutes, teaches], place) => ({
        place, minutes, adds: owned.has(id) ? [] : teaches.filter((objective) => !have.has(objective)),
      }));
      const most = Math.max(0, ...gains.map(({ adds }) => adds.length));
      if (!most) return [];
      return gains.filter(({ adds }) => adds.length === most).sort((a, b) => a.minutes - b.minutes || a.place - b.place)
        .map(({ place, adds }) => [place, adds]);
    },
  };
})();
