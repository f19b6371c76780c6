/* When nothing fits: what to let go of, what else to type, and the ideas that lack least. And pages that help. */
(() => {
  const { finder, element, root } = window.storymaths;
  const NEAREST = 6, PAGES = 4;

  const offersOf = (data, state, scores, { near, needed }, { choose, ask, clear }) => {
    const offers = [];
    for (const value of state.order) {
      const chosen = state.chosen.slice();
      chosen[value] = 0;
      const left = finder.count(data, chosen, scores).fitting.length;
      if (left) offers.push([`Without “${data.values[value].words}”: ${left}`, () => choose(value, false)]);
    }
    if (state.q && needed) {
      const left = finder.count(data, state.chosen, null).fitting.length;
      if (left) offers.push([`Without the words: ${left}`, () => ask("")]);
    }
    const words = state.q && !near.length ? finder.nearWords(data, state.q) : [];
    offers.push(...words.map((word) => [`Try “${word}”`, () => ask(word)]));
    if (!offers.length && (state.q || state.order.length)) offers.push(["Start again", clear]);
    return offers;
  };

  /* `offers` are words for a button and what it does; `rows` the nearest, best first; `reasonFor` what one lacks. */
  finder.nearest = (data, state, scores, counted, actions) => {
    const lacks = new Map(counted.near);
    return {
      offers: offersOf(data, state, scores, counted, actions),
      rows: finder.rank(data, counted.near.map(([row]) => row), state, scores).slice(0, NEAREST),
      reasonFor: (row) => {
        const lacking = finder.FACETS.filter((_, facet) => lacks.get(row) >> facet & 1);
        return `all but the ${lacking.map(([, name]) => name.toLowerCase()).join(" and the ")}`;
      },
    };
  };

  /* A line that leads to the pages of concepts the words name, or null. */
  finder.drawPagesToo = (data, q) => {
    const asked = finder.wordsOf(q);
    if (!asked.length || q.length < 3) return null;
    const isNamed = ([, name]) => asked.every((word) => finder.standsIn(name.toLowerCase(), word));
    const named = data.columns.concepts.filter(isNamed).slice(0, PAGES);
    if (!named.length) return null;
    const line = element("p", "pages-too", named.length === 1 ? "There is a page on " : "There are pages on ");
    named.forEach(([id, name], n) => {
      const link = element("a", "", name.toLowerCase());
      link.href = new URL(`concepts/${id}.html`, root);
      line.append(n ? ", " : "", link);
    });
    line.append(".");
    return line;
  };
})();
