/* What stands where on a board: moves, taking one back, starting again, and the same key the build made for an answer. */
(() => {
  const { memory } = window.storymaths;

  window.storymaths.boardState = (data, name) => {
    const empty = () => Object.fromEntries(data.places.map((place) => [place.id, []]));
    const pieces = new Map(data.pieces.map((piece) => [piece.id, piece]));
    const places = new Map(data.places.map((place) => [place.id, place]));
    const kept = memory.get(name);
    let now = usable(kept?.now) ? kept.now : empty();
    let before = Array.isArray(kept?.before) ? kept.before.filter(usable) : [];
    let tries = usable(kept?.now) && Array.isArray(kept.tries) ? kept.tries : []; // those of an activity that was changed mean nothing
    const listeners = [];

    function usable(state) {
      return Boolean(state) && data.places.every(({ id }) => Array.isArray(state[id]) && state[id].every((one) => pieces.has(one)));
    }
    const changed = () => {
      memory.set(name, { now, before: before.slice(-50), tries });
      for (const listener of listeners) listener();
    };
    const left = (id) => {
      const { copies } = pieces.get(id);
      return copies === null ? Infinity : copies - Object.values(now).flat().filter((one) => one === id).length;
    };
    const whereIs = (id) => data.places.find((place) => now[place.id].includes(id))?.id ?? null;
    /* Whether a piece may stand in a place. One place may hand over what it holds when it is full. */
    const fits = (id, place) => !places.get(place).takes || places.get(place).takes === pieces.get(id).sort;

    const move = (id, start, to) => {
      // A piece there is only one of, like a hand of a clock, may be asked for again: it leaves where it is.
      const from = start ?? (left(id) < 1 ? whereIs(id) : null);
      if (from === to || (to && !fits(id, to)) || (!from && left(id) < 1)) return false;
      const next = structuredClone(now);
      if (from) next[from].splice(next[from].lastIndexOf(id), 1);
      if (to) {
        const { holds } = places.get(to);
        if (holds !== null && next[to].length >= holds) next[to].pop(); // what stood there goes back
        next[to].push(id);
      }
      before.push(now);
      now = next;
      changed();
      return true;
    };

    return {
      pieces, places, left, fits, move, whereIs,
      get now() { return now; },
      get tries() { return tries; },
      canTakeBack: () => before.length > 0,
      takeBack: () => { if (before.length) { now = before.pop(); changed(); } },
      startAgain: () => { if (Object.values(now).flat().length) { before.push(now); now = empty(); changed(); } },
      key: () => data.places
        .map((place) => (place.in_order ? [...now[place.id]] : [...now[place.id]].sort()).join(","))
        .filter((part) => part || data.empty_matters)
        .join("|"),
      record: (words, answer) => { tries.push({ words, answer }); changed(); },
      found: () => new Set(tries.map((one) => one.answer).filter((answer) => answer !== null)).size,
      onChange: (listener) => listeners.push(listener),
    };
  };
})();
