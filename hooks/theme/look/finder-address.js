/* The state of the finder in the address of its page, so that it can be kept, sent, and gone back to. */
(() => {
  const { finder } = window.storymaths;

  finder.readAddress = ({ number, values }) => {
    const query = new URLSearchParams(location.search);
    const chosen = new Uint8Array(values.length), order = [];
    for (const [facet, key] of query) {
      const value = number.get(`${facet}:${key}`);
      if (value !== undefined && !chosen[value]) { chosen[value] = 1; order.push(value); }
    }
    return { q: query.get("q") ?? "", chosen, order, shown: Number.parseInt(query.get("shown"), 10) || 0 };
  };

  finder.writeAddress = ({ values }, state, replace) => {
    const query = new URLSearchParams();
    if (state.q) query.set("q", state.q);
    for (const value of state.order) query.append(values[value].name, values[value].key);
    if (state.shown > finder.PAGE) query.set("shown", state.shown);
    const text = query.toString();
    try {
      history[replace ? "replaceState" : "pushState"](null, "", text ? `?${text}` : location.pathname);
    } catch { /* some browsers keep no state for pages opened from a stick */ }
  };
})();
