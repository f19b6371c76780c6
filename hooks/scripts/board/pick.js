/*
 * Moves a piece by tap then tap, or by keyboard: choose a piece, then choose its place. Escape lets it go.
 * Where all pieces are alike there is nothing to choose: a tap on a place puts one there, and on a full square takes it away.
 */
/** @import { Say } from "../screen/say.js" */
/** @import { BoardData, State } from "./state.js" */
import { all, around } from "../site/find.js";

/**
 * @typedef {{ id: string, from: string }} Held a piece and the place it is taken from, "" for the tray
 * @typedef {(piece: Held, to: string) => void} Drop
 */

/** @type {(button: HTMLElement) => Held} */
export const heldOf = ({ dataset }) => ({ id: dataset.piece ?? "", from: dataset.from ?? "" });

/** @type {Record<string, number>} */
const STEPS = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** @type {(board: HTMLElement, data: BoardData, state: State, say: Say) => { drop: Drop, refresh: () => void }} */
export const openPick = (board, data, state, say) => {
  const across = data.columns.length, [{ id: alike, copies }, another] = data.pieces.filter(({ stays }) => !stays);
  const only = another || copies === 1 ? null : alike;
  /** @type {Held | null} */
  let held = null;
  let byKeys = false;
  board.addEventListener("keydown", () => { byKeys = true; }, true);
  board.addEventListener("pointerdown", () => { byKeys = false; }, true);

  /** @type {(button: HTMLElement, piece: Held | null) => boolean} */
  const isSame = ({ dataset }, piece) => piece !== null && dataset.piece === piece.id && dataset.from === piece.from;

  /** @type {(piece: Held | null) => void} */
  const hold = (piece) => {
    held = piece;
    board.classList.toggle("holding", piece !== null);
    for (const button of all(board, ".piece", HTMLElement)) {
      button.setAttribute("aria-pressed", String(isSame(button, piece)));
    }
    for (const button of all(board, ".put", HTMLButtonElement)) {
      const { place } = button.dataset;
      const id = piece ? piece.id : place ? only : null;
      button.disabled = id === null || Boolean(place && !state.fits(id, place));
    }
    if (piece) say(`${state.piece(piece.id).name}: choose a place`);
  };

  /** @type {Drop} */
  const drop = (piece, to) => {
    const { name } = state.piece(piece.id), moved = state.move(piece.id, piece.from || null, to || null);
    hold(null);
    if (!moved) return;
    say(to ? `${name} to ${state.place(to).name}` : `${name} taken back`);
    if (byKeys && !only) all(board, ".tray .piece:not([disabled])", HTMLElement)[0]?.focus({ preventScroll: true });
  };

  board.addEventListener("click", (event) => {
    const piece = around(event, ".piece"), place = around(event, ".put") ?? around(event, ".place, .tray");
    const onto = held && place && piece && held.from !== piece.dataset.from && !isSame(piece, held);
    const to = place?.dataset.place ?? "";
    if (only && across && !held && to && state.fits(only, to)) drop({ id: only, from: state.isFilled(to) ? to : "" }, state.isFilled(to) ? "" : to);
    else if (piece && !onto) hold(isSame(piece, held) ? null : heldOf(piece));
    else if (held && place) drop(held, to);
    else if (only && to) drop({ id: only, from: "" }, to);
  });
  board.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && held) {
      hold(null);
      event.preventDefault();
      return;
    }
    const step = STEPS[event.key];
    if (!step) return;
    const every = all(board, held || only ? ".put" : ".tray .piece", HTMLButtonElement);
    const open = every.filter((one) => !one.disabled);
    if (!open.length) return;
    const here = open.findIndex((one) => one === document.activeElement);
    if (across && here >= 0 && open[here].dataset.place && ["ArrowUp", "ArrowDown"].includes(event.key)) {
      let to = every.indexOf(open[here]) + step * across;
      while (every[to]?.disabled) to += step * across;
      every[to]?.focus();
      event.preventDefault();
      return;
    }
    open[here < 0 ? (step > 0 ? 0 : open.length - 1) : (here + step + open.length) % open.length].focus();
    event.preventDefault();
  });
  return { drop, refresh: () => hold(held) };
};
