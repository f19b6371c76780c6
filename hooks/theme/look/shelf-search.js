/* Finds every cheapest cover by branch and bound: step by step as covers/shelf_search.py and shelf_bounds.py do. */
(() => {
  const ONE = 720720; // one book, or one minute, in parts: divided by 1 to 16 without a rest

  const least = (places, of) => places.reduce((low, place) => Math.min(low, of[place]), Infinity);
  const taking = (live, of) => Object.fromEntries(live.map((place) => [place, of(place)]));

  /* The least any cover costs, and the choices that can be part of one within `room`; null when none is. */
  const affordable = (live, cost, size, coverers, room) => {
    const left = { ...cost }, even = taking(live, (place) => Math.floor(cost[place] / size[place]));
    let whole = 0;
    const price = (choices, amount) => {
      whole += amount;
      choices.forEach((place) => { left[place] -= amount; });
    };
    for (const choices of coverers) price(choices, least(choices, even));
    for (const choices of coverers) {
      if (whole > room) return null;
      price(choices, least(choices, left));
    }
    return whole > room ? null : [whole, live.filter((place) => whole + left[place] <= room)];
  };

  const search = (rows, choices, caps) => {
    const found = { ways: [], more: false, proved: true };
    const minutesOf = (taken) => taken.reduce((sum, place) => sum + choices[place].minutes, 0);
    let best = [0, 0], tries = 0;

    const gainOf = (place, open) => choices[place].covers.reduce((sum, row) => sum + (open.has(row) ? 1 : 0), 0);
    const without = (open, place) => {
      const rest = new Set(open);
      choices[place].covers.forEach((row) => rest.delete(row));
      return rest;
    };

    /* A cover to begin with: again and again what covers most. */
    const greedy = () => {
      const taken = [];
      for (let open = rows; open.size; open = without(open, taken.at(-1))) {
        const gains = choices.map((_, place) => gainOf(place, open));
        taken.push(gains.indexOf(Math.max(...gains)));
      }
      return taken;
    };

    const note = (taken) => {
      const cost = [taken.length, minutesOf(taken)];
      if (cost[0] < best[0] || (cost[0] === best[0] && cost[1] < best[1])) {
        best = cost;
        Object.assign(found, { ways: [], more: false });
      }
      if (cost[0] !== best[0] || cost[1] !== best[1]) return;
      if (found.ways.length < caps.ways) found.ways.push(taken);
      else found.more = true;
    };

    /* The choices that cover each row, the row with the fewest first. */
    const coverersOf = (open, live) => {
      const at = new Map([...open].sort((a, b) => a - b).map((row) => [row, []]));
      for (const place of live) choices[place].covers.forEach((row) => at.get(row)?.push(place));
      return [...at.values()].sort((a, b) => a.length - b.length);
    };

    /* Those of `live` that can be part of a cover by exactly `books` choices within the minutes of `room`. */
    const inTime = (live, all, size, coverers, books, room) => {
      const shortest = live.map((place) => choices[place].minutes).sort((a, b) => a - b).slice(0, books);
      if (shortest.reduce((sum, minutes) => sum + minutes, 0) * ONE > room) return null;
      const kept = affordable(all, taking(all, (place) => choices[place].minutes * ONE), size, coverers, room);
      const still = new Set(live);
      return kept && [kept[0], kept[1].filter((place) => still.has(place))];
    };

    /* The choices worth trying, and those of the row with fewest; null when nothing as good as the best can come. */
    const narrowed = (open, start, taken) => {
      const books = best[0] - taken.length, room = (best[1] - minutesOf(taken)) * ONE - (found.more ? 1 : 0);
      for (let live = start; ;) {
        const coverers = coverersOf(open, live), size = taking(live, (place) => gainOf(place, open));
        if (!coverers[0].length) return null;
        const all = live.filter((place) => size[place]);
        let kept = affordable(all, taking(all, () => ONE), size, coverers, books * ONE);
        if (kept && kept[0] > (books - 1) * ONE) kept = inTime(kept[1], all, size, coverers, books, room);
        if (!kept) return null;
        if (kept[1].length === live.length) return [live, coverers[0]];
        [, live] = kept;
      }
    };

    const visit = (open, start, taken) => {
      tries += 1;
      if (tries > caps.tries) found.proved = false;
      else if (!open.size) note(taken);
      else {
        const looked = narrowed(open, start, taken);
        if (!looked) return;
        let [live, first] = looked;
        const gain = taking(first, (place) => gainOf(place, open));
        first = [...first].sort((a, b) => gain[b] - gain[a] || choices[a].minutes - choices[b].minutes || a - b);
        for (const place of first) {
          visit(without(open, place), live, [...taken, place]);
          live = live.filter((other) => other !== place);
        }
      }
    };

    const first = greedy();
    best = [first.length, minutesOf(first)];
    visit(rows, choices.map((_, place) => place), []);
    if (!found.ways.length) found.ways.push(first);
    return found;
  };

  /* Every cheapest cover of `rows`, as places in `choices`: fewest choices first, then fewest minutes. */
  window.storymaths.searchShelf = (rows, choices, caps) => {
    const order = choices.map((_, place) => place).sort((a, b) => choices[b].covers.length - choices[a].covers.length
      || choices[a].minutes - choices[b].minutes || a - b);
    const found = search(rows, order.map((place) => choices[place]), caps);
    return { ...found, ways: found.ways.map((way) => way.map((place) => order[place])) };
  };
})();
