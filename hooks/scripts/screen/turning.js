/* Turns slides by keys, a clicker or a swipe. */
import { around } from "../site/find.js";

const SWIPE = 60; // pixels
const FORWARD = new Set(["PageDown", "ArrowRight", " "]), BACKWARD = new Set(["PageUp", "ArrowLeft"]);
const USES_KEYS = "select, input, summary, [data-board], [tabindex]:not(main)";

/**
 * Turns by keys; those that move inside a control stay its own, and the space bar still presses a button.
 * @type {(turnBy: (by: number) => void, turnToEnd: (last: boolean) => void) => void}
 */
export const turnByKeys = (turnBy, turnToEnd) => document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented || document.querySelector("dialog[open]")) return;
  const taken = around(event, event.key === " " ? `${USES_KEYS}, button, a` : USES_KEYS);
  if (taken && !event.key.startsWith("Page")) return;
  if (FORWARD.has(event.key)) turnBy(1);
  else if (BACKWARD.has(event.key)) turnBy(-1);
  else if (event.key === "Home" || event.key === "End") turnToEnd(event.key === "End");
  else return;
  event.preventDefault();
});

/**
 * Turns by a finger that moves across, wherever nothing is picked up or put down.
 * @type {(screen: HTMLElement, turnBy: (by: number) => void) => void}
 */
export const turnBySwipes = (screen, turnBy) => {
  /** @type {PointerEvent | null} */
  let down = null;
  screen.addEventListener("pointerdown", (event) => {
    const first = event.pointerType === "touch" && event.isPrimary;
    down = first && !around(event, ".tray, .place, .clock-face, .table-frame, .screen-bar") ? event : null;
  });
  screen.addEventListener("pointercancel", () => { down = null; });
  screen.addEventListener("pointerup", (event) => {
    if (!down || event.pointerId !== down.pointerId) return;
    const across = event.clientX - down.clientX, along = event.clientY - down.clientY;
    down = null;
    if (Math.abs(across) > SWIPE && Math.abs(across) > 2 * Math.abs(along)) turnBy(across < 0 ? 1 : -1);
  });
};

/**
 * After a click or a tap the keys are the screen's again: only who goes by keys keeps a place among the controls.
 * @type {(screen: HTMLElement) => void}
 */
export const leaveNoFocus = (screen) => {
  let pointed = false;
  addEventListener("pointerdown", () => { pointed = true; }, true);
  addEventListener("keydown", () => { pointed = false; }, true);
  const leave = () => {
    if (pointed && document.activeElement instanceof HTMLElement) document.activeElement.blur();
  };
  screen.addEventListener("change", leave);
  for (const kind of ["click", "pointerup"]) {
    addEventListener(kind, (event) => { if (!around(event, "select, dialog")) leave(); });
  }
};
