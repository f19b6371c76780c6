/* Moves a piece by dragging it, with a mouse, a pen or a finger. */
/** @import { Drop } from "./pick.js" */
import { all, around } from "../site/find.js";
import { heldOf } from "./pick.js";

const FAR = 8; // pixels before a press is a drag
const FACE = 0.62; // of a clock's width: how far from its middle is still on it

/** A copy of a piece to carry. @type {(board: HTMLElement, piece: HTMLElement) => HTMLElement} */
const lift = (board, piece) => {
  const shade = /** @type {HTMLElement} */ (piece.cloneNode(true));
  shade.classList.add("in-hand");
  shade.setAttribute("aria-hidden", "true");
  shade.tabIndex = -1;
  piece.classList.add("lifted");
  board.append(shade);
  return shade;
};

/**
 * On a clock, where places are small, the nearest that takes the piece.
 * @type {(clock: HTMLElement, event: PointerEvent, sort: string) => HTMLElement | null}
 */
const nearestOn = (clock, event, sort) => {
  const face = clock.getBoundingClientRect();
  const x = event.clientX - (face.x + face.width / 2), y = event.clientY - (face.y + face.height / 2);
  if (Math.hypot(x, y) > face.width * FACE) return null;
  const turn = (Math.atan2(x, -y) * 180 / Math.PI + 360) % 360;
  /** @type {(place: HTMLElement) => number} */
  const away = (place) => {
    const gap = Math.abs(Number(place.dataset.turn) - turn);
    return Math.min(gap, 360 - gap);
  };
  const taking = all(clock, ".place", HTMLElement).filter((place) => place.dataset.takes === sort);
  return taking.sort((a, b) => away(a) - away(b))[0] ?? null;
};

/**
 * The place below the pointer.
 * @type {(board: HTMLElement, event: PointerEvent, sort: string) => HTMLElement | null}
 */
const under = (board, event, sort) => {
  const [clock] = all(board, ".clock-face", HTMLElement);
  if (clock) return nearestOn(clock, event, sort);
  const found = document.elementsFromPoint(event.clientX, event.clientY).map((one) => one.closest(".place, .tray"))
    .find((one) => one && board.contains(one)); // a place of another board is none of this one's
  return found instanceof HTMLElement ? found : null;
};

/** @type {(event: Event) => void} */
const stop = (event) => { event.stopPropagation(); event.preventDefault(); };

/** @type {(board: HTMLElement, drop: Drop) => void} */
export const openDrag = (board, drop) => {
  /** @type {{ piece: HTMLElement, x: number, y: number, shade: HTMLElement | null, pointer: number } | null} */
  let drag = null;
  /** @type {(event: PointerEvent, piece: HTMLElement) => HTMLElement | null} */
  const below = (event, piece) => under(board, event, piece.dataset.sort ?? "");
  const leave = () => { for (const place of board.querySelectorAll(".over")) place.classList.remove("over"); };

  board.addEventListener("pointerdown", (event) => {
    const piece = around(event, ".piece:not([disabled])");
    if (!piece || event.button !== 0) return;
    drag = { piece, x: event.clientX, y: event.clientY, shade: null, pointer: event.pointerId };
  });
  // A browser that takes a drag for a scroll loses the tap that comes next: a finger on a piece is no gesture of its own.
  board.addEventListener("touchstart", (event) => { if (around(event, ".piece")) event.preventDefault(); }, { passive: false });
  addEventListener("pointermove", (event) => {
    if (!drag || event.pointerId !== drag.pointer) return;
    if (!drag.shade && Math.hypot(event.clientX - drag.x, event.clientY - drag.y) < FAR) return;
    drag.shade ??= lift(board, drag.piece);
    drag.shade.style.translate = `${event.clientX}px ${event.clientY}px`;
    leave();
    below(event, drag.piece)?.classList.add("over");
  });
  /** @type {(event: PointerEvent) => void} */
  const end = (event) => {
    if (!drag || event.pointerId !== drag.pointer) return;
    const { piece, shade } = drag;
    drag = null;
    leave();
    if (!shade) {
      if (event.type === "pointerup" && event.pointerType === "touch") piece.click(); // the browser makes no click of it
      return;
    }
    shade.remove();
    piece.classList.remove("lifted");
    // The click that follows a drag is not a choice.
    addEventListener("click", stop, { capture: true, once: true });
    setTimeout(() => removeEventListener("click", stop, { capture: true }), 0);
    const place = event.type === "pointerup" ? below(event, piece) : null;
    if (place) drop(heldOf(piece), place.dataset.place ?? "");
  };
  addEventListener("pointerup", end);
  addEventListener("pointercancel", end);
};
