/* The state of the finder in the address of its page, so that it can be kept, sent, and gone back to. */
/** @import { Data } from "./rows.js" */

/** @typedef {{ q: string, chosen: Uint8Array, order: number[], shown: number }} State */

/** How many ideas are shown at a time. */
export const PAGE = 30;

/** @type {(data: Data) => State} */
export const readAddress = ({ number, values }) => {
  const query = new URLSearchParams(location.search);
  const chosen = new Uint8Array(values.length), order = [];
  for (const [facet, key] of query) {
    const value = number.get(`${facet}:${key}`);
    if (value !== undefined && !chosen[value]) { chosen[value] = 1; order.push(value); }
  }
  return { q: query.get("q") ?? "", chosen, order, shown: Number.parseInt(query.get("shown") ?? "", 10) || 0 };
};

/** @type {(data: Data, state: State, replace: boolean) => void} */
export const writeAddress = ({ values }, state, replace) => {
  const query = new URLSearchParams();
  if (state.q) query.set("q", state.q);
  for (const value of state.order) query.append(values[value].name, values[value].key);
  if (state.shown > PAGE) query.set("shown", String(state.shown));
  const text = query.toString();
  try {
    history[replace ? "replaceState" : "pushState"](null, "", text ? `?${text}` : location.pathname);
  } catch { /* some browsers keep no state for pages opened from a stick */ }
};
