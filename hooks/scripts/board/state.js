/* What stands where on a board: moves, taking one back, starting again, and the same key the build made for an answer. */

/**
 * @typedef {{
 *   id: string, name: string, picture: string, outline: string, shows: string, copies: number | null, sort: string, worth: number,
 *   look: "card" | "counter" | "coin" | "weight" | "point" | "shade" | "bar", stays: boolean,
 * }} Piece
 * @typedef {{
 *   id: string, name: string, holds: number | null, in_order: boolean, takes: string, turn: number, marks: string[],
 * }} Place
 * @typedef {{
 *   layout: "beam" | "rings" | "venn" | "carroll" | "rows" | "slots" | "sentence" | "clock" | "squares" | "points" | "line",
 *   says: string, pieces: Piece[], places: Place[], answers: Record<string, number>, empty_matters: boolean,
 *   between: string[], columns: string[], rows: string[], start: Standing,
 * }} BoardData as hooks/storymaths/render/screens/board.py gives it
 * @typedef {Record<string, string[]>} Standing the pieces in each place
 * @typedef {{ words: string, answer: number | null }} Try
 * @typedef {{ now?: unknown, before?: unknown, tries?: unknown }} Kept what may be kept of a board; an older one may differ
 * @typedef {ReturnType<typeof openState>} State
 */

/** @param {BoardData} data @param {Kept | undefined} kept @param {(kept: Kept) => void} keep */
export const openState = (data, kept, keep) => {
  const pieces = new Map(data.pieces.map((piece) => [piece.id, piece]));
  const places = new Map(data.places.map((place) => [place.id, place]));
  /** @type {() => Standing} */
  const empty = () => Object.fromEntries(data.places.map(({ id }) => [id, [...(data.start[id] ?? [])]]));
  /** @param {unknown} standing @returns {standing is Standing} */
  const isUsable = (standing) => standing instanceof Object && data.places.every(({ id }) => {
    const there = /** @type {Record<string, unknown>} */ (standing)[id];
    return Array.isArray(there) && there.every((one) => pieces.has(one)) && (data.start[id] ?? []).every((one) => there.includes(one));
  });
  let now = isUsable(kept?.now) ? kept.now : empty();
  /** @type {Standing[]} */
  const before = Array.isArray(kept?.before) ? kept.before.filter(isUsable) : [];
  /** Those of an activity that was changed mean nothing. @type {Try[]} */
  const tries = isUsable(kept?.now) && Array.isArray(kept.tries) ? kept.tries : [];
  /** @type {(() => void)[]} */
  const listeners = [];

  const changed = () => {
    keep({ now, before: before.slice(-50), tries });
    for (const listener of listeners) listener();
  };
  /** @type {(id: string) => Piece} */
  const piece = (id) => /** @type {Piece} */ (pieces.get(id));
  /** @type {(id: string) => Place} */
  const place = (id) => /** @type {Place} */ (places.get(id));
  /** @type {(id: string) => number} */
  const left = (id) => {
    const { copies } = piece(id);
    return copies === null ? Infinity : copies - Object.values(now).flat().filter((one) => one === id).length;
  };
  const isAsAtFirst = () => JSON.stringify(now) === JSON.stringify(empty());
  /** @type {(id: string) => string | null} */
  const whereIs = (id) => data.places.find((one) => now[one.id].includes(id))?.id ?? null;
  /**
   * Whether a piece may stand in a place. One place may hand over what it holds when it is full.
   * @type {(id: string, to: string) => boolean}
   */
  const fits = (id, to) => !place(to).takes || place(to).takes === piece(id).sort;

  /** @type {(id: string, start: string | null, to: string | null) => boolean} */
  const move = (id, start, to) => {
    if (piece(id).stays) return false;
    // A piece there is only one of, like a hand of a clock, may be asked for again: it leaves where it is.
    const from = start ?? (left(id) < 1 ? whereIs(id) : null);
    if (from === to || (to && !fits(id, to)) || (!from && left(id) < 1)) return false;
    const next = Object.fromEntries(Object.entries(now).map(([one, standing]) => [one, [...standing]]));
    if (from) next[from].splice(next[from].lastIndexOf(id), 1);
    if (to) {
      const { holds } = place(to);
      if (holds !== null && next[to].length >= holds) next[to].pop(); // what stood there goes back
      next[to].push(id);
    }
    before.push(now);
    now = next;
    changed();
    return true;
  };

  return {
    piece, place, left, fits, move, whereIs,
    /** @type {(id: string) => Piece[]} */
    standing: (id) => now[id].map(piece),
    /** @type {(id: string) => boolean} */
    isFilled: (id) => now[id].length > 0,
    isAsAtFirst,
    tries: () => tries,
    canTakeBack: () => before.length > 0,
    takeBack: () => {
      const last = before.pop();
      if (last) { now = last; changed(); }
    },
    startAgain: () => { if (!isAsAtFirst()) { before.push(now); now = empty(); changed(); } },
    key: () => data.places
      .map((one) => (one.in_order ? [...now[one.id]] : [...now[one.id]].sort()).join(","))
      .filter((words) => words || data.empty_matters)
      .join("|"),
    /** @type {(words: string, answer: number | null) => void} */
    record: (words, answer) => { tries.push({ words, answer }); changed(); },
    found: () => new Set(tries.map((one) => one.answer).filter((answer) => answer !== null)).size,
    /** @type {(listener: () => void) => void} */
    onChange: (listener) => { listeners.push(listener); },
  };
};
