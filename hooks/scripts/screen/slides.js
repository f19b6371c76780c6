/* Shows one slide at a time of those for the class's year, and remembers which. */
/** @import { Memory } from "./memory.js" */
/** @import { Say } from "./say.js" */
import { button, element } from "../site/element.js";
import { all } from "../site/find.js";
import { openPast, slideBefore } from "./past.js";
import { leaveNoFocus, turnByKeys, turnBySwipes } from "./turning.js";

/**
 * @typedef {{
 *   bar: HTMLElement, current: () => HTMLElement, onShow: (listener: () => void) => void, show: () => void,
 *   year: string, choose: (year: string) => void,
 * }} Slides
 *   `show` is called once, when all that listens for a slide is there; `choose` shows the slides of another year
 */

/** @type {(slide: HTMLElement) => string} */
const titleOf = (slide) => slide.querySelector("h2")?.textContent ?? "";

/** @type {(slide: HTMLElement, year: string) => boolean} */
const isFor = ({ dataset }, year) => !dataset.years || dataset.years.split(" ").includes(year);

/**
 * The slides of a screen; null where it has none.
 * @type {(screen: HTMLElement, memory: Memory, say: Say) => Slides | null}
 */
export const openSlides = (screen, memory, say) => {
  const slides = all(screen, ".slide", HTMLElement);
  if (!slides.length) return null;
  screen.classList.add("one-at-a-time");
  /** @type {(() => void)[]} */
  const listeners = [];
  let year = String(memory.get("year") ?? screen.dataset.year ?? "");
  if (!slides.some((slide) => slide.dataset.years && isFor(slide, year))) year = screen.dataset.year ?? "";
  /** The numbers of those that are shown. @type {number[]} */
  let run = [];
  let at = 0;

  const bar = element("nav", "screen-bar"), where = element("select", "where");
  bar.setAttribute("aria-label", "The class screen");
  where.setAttribute("aria-label", "Go to");
  where.addEventListener("change", () => turn(Number(where.value)));
  const back = button("Back", () => turnBy(-1), "turn back"), on = button("Next", () => turnBy(1), "turn on");
  bar.append(back, where, on);
  screen.append(bar);

  const gather = () => {
    run = slides.map((_, n) => n).filter((n) => isFor(slides[n], year));
    where.replaceChildren(...run.map((n, place) => {
      const option = element("option", "", `${place + 1} · ${titleOf(slides[n])}`);
      option.value = String(n);
      return option;
    }));
  };
  /** The nearest that is shown, at or before a number. @type {(number: number) => number} */
  const nearest = (number) => run.filter((n) => n <= number).at(-1) ?? run[0];
  const show = () => {
    slides.forEach((slide, n) => { slide.hidden = n !== at; });
    where.value = String(at);
    back.disabled = at === run[0];
    on.disabled = at === run.at(-1);
    for (const listener of listeners) listener();
  };
  /** @type {(to: number) => boolean} */
  const go = (to) => {
    const next = nearest(to);
    if (next === at) return false;
    at = next;
    memory.set("slide", at);
    show();
    say(`${run.indexOf(at) + 1} of ${run.length}: ${titleOf(slides[at])}`);
    window.scrollTo(0, 0);
    return true;
  };
  /** @type {(to: number) => void} */
  const turn = (to) => {
    const before = at;
    if (go(to)) past.keep(at, at > before);
  };
  /** The slide so many further on. @type {(by: number) => number} */
  const further = (by) => run[Math.max(0, Math.min(run.length - 1, run.indexOf(at) + by))];
  /** @type {(by: number) => void} */
  const turnBy = (by) => turn(further(by));

  gather();
  at = nearest(slideBefore() ?? (Number(memory.get("slide")) || 0));
  const past = openPast(() => at, run.filter((n) => n < at), (slide, by) => (
    go((slide - at) * by > 0 ? slide : further(by))));
  turnByKeys(turnBy, (last) => turn(last ? run[run.length - 1] : run[0]));
  turnBySwipes(screen, turnBy);
  leaveNoFocus(screen);
  return {
    bar, show, year, current: () => slides[at], onShow: (listener) => listeners.push(listener),
    choose: (other) => {
      year = other;
      memory.set("year", year);
      gather();
      if (!go(at)) show();
    },
  };
};
