/* Shows one slide at a time, turned by keys, a clicker, a swipe or the bar below, and remembers which. */
/** @import { Memory } from "./memory.js" */
/** @import { Say } from "./say.js" */
import { button, element } from "../site/element.js";
import { all, around } from "../site/find.js";

/**
 * @typedef {{ bar: HTMLElement, current: () => HTMLElement, onShow: (listener: () => void) => void, show: () => void }} Slides
 *   `show` is called once, when all that listens for a slide is there
 */

const SWIPE = 60;
const FORWARD = new Set(["PageDown", "ArrowRight", " "]), BACKWARD = new Set(["PageUp", "ArrowLeft"]);

/** @type {(slide: HTMLElement) => string} */
const titleOf = (slide) => slide.querySelector("h2")?.textContent ?? "";

/**
 * Turns by keys; those that move between controls stay theirs.
 * @type {(turn: (to: number) => void, now: () => number, last: number) => void}
 */
const turnByKeys = (turn, now, last) => document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
  const control = around(event, "button, select, input, a, summary, [tabindex]:not(main)");
  if (control && !event.key.startsWith("Page")) return;
  if (FORWARD.has(event.key)) turn(now() + 1);
  else if (BACKWARD.has(event.key)) turn(now() - 1);
  else if (event.key === "Home") turn(0);
  else if (event.key === "End") turn(last);
  else return;
  event.preventDefault();
});

/** @type {(screen: HTMLElement, turnBy: (by: number) => void) => void} */
const turnBySwipes = (screen, turnBy) => {
  /** @type {PointerEvent | null} */
  let down = null;
  screen.addEventListener("pointerdown", (event) => {
    down = event.pointerType === "touch" && !around(event, "[data-board], button, select, a, summary") ? event : null;
  });
  screen.addEventListener("pointerup", (event) => {
    if (!down || event.pointerType !== "touch") return;
    const across = event.clientX - down.clientX, along = event.clientY - down.clientY;
    if (Math.abs(across) > SWIPE && Math.abs(across) > 2 * Math.abs(along)) turnBy(across < 0 ? 1 : -1);
    down = null;
  });
};

/**
 * The slides of a screen; null where it has none.
 * @type {(screen: HTMLElement, memory: Memory, say: Say) => Slides | null}
 */
export const openSlides = (screen, memory, say) => {
  const slides = all(screen, ".slide", HTMLElement), last = slides.length - 1;
  if (!slides.length) return null;
  screen.classList.add("one-at-a-time");
  let at = Math.min(Number(memory.get("slide")) || 0, last);
  /** @type {(() => void)[]} */
  const listeners = [];

  const bar = element("nav", "screen-bar"), where = element("select", "where");
  bar.setAttribute("aria-label", "The class screen");
  where.setAttribute("aria-label", "Go to");
  slides.forEach((slide, n) => {
    const option = element("option", "", `${n + 1} · ${titleOf(slide)}`);
    option.value = String(n);
    where.append(option);
  });
  where.addEventListener("change", () => turn(Number(where.value)));
  const back = button("Back", () => turn(at - 1), "turn back"), on = button("Next", () => turn(at + 1), "turn on");
  bar.append(back, where, on);
  screen.append(bar);

  const show = () => {
    slides.forEach((slide, n) => { slide.hidden = n !== at; });
    where.value = String(at);
    back.disabled = at === 0;
    on.disabled = at === last;
    for (const listener of listeners) listener();
  };
  /** @type {(to: number) => void} */
  const turn = (to) => {
    const next = Math.max(0, Math.min(last, to));
    if (next === at) return;
    at = next;
    memory.set("slide", at);
    show();
    say(`${at + 1} of ${slides.length}: ${titleOf(slides[at])}`);
    window.scrollTo(0, 0);
  };
  turnByKeys(turn, () => at, last);
  turnBySwipes(screen, (by) => turn(at + by));
  return { bar, current: () => slides[at], onShow: (listener) => listeners.push(listener), show };
};
