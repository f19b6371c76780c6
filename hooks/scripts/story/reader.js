/* Turns the column of a story's pages into one page at a time. The page is in the address, so it can be linked to. */
import { button, element } from "../site/element.js";
import { all, around } from "../site/find.js";

/**
 * @typedef {{
 *   frame: HTMLElement, more: HTMLElement, page: () => HTMLElement, isReading: () => boolean,
 *   onTurn: (listener: () => void) => void,
 * }} Reader `more` holds what else can be done; listeners hear of each page turned, and of one page or all of them
 */

const SWIPE = 50;

/** @type {(story: HTMLElement, turnBy: (by: number) => void) => void} */
const turnBySwipes = (story, turnBy) => {
  /** @type {{ x: number, y: number } | null} */
  let from = null;
  story.addEventListener("touchstart", ({ touches }) => {
    const plain = touches.length === 1 && (window.visualViewport?.scale ?? 1) === 1; // not while zoomed in
    from = plain ? { x: touches[0].clientX, y: touches[0].clientY } : null;
  }, { passive: true });
  story.addEventListener("touchend", ({ changedTouches }) => {
    if (!from) return;
    const across = changedTouches[0].clientX - from.x, down = changedTouches[0].clientY - from.y;
    from = null;
    if (Math.abs(across) > SWIPE && Math.abs(across) > Math.abs(down) * 2) turnBy(across < 0 ? 1 : -1);
  });
};

/** @type {(turnBy: (by: number) => void) => void} */
const turnByKeys = (turnBy) => document.addEventListener("keydown", (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  if (around(event, "input, select, textarea")) return;
  if (event.key === "ArrowRight") turnBy(1);
  else if (event.key === "ArrowLeft") turnBy(-1);
});

/** The reader of a story; null where there are no pages to turn. @type {(story: HTMLElement) => Reader | null} */
export const openReader = (story) => {
  const pages = all(story, ".spread", HTMLElement);
  if (pages.length < 2) return null;
  let here = -1, reading = true;
  /** @type {(() => void)[]} */
  const listeners = [];
  const tell = () => { for (const listener of listeners) listener(); };

  const said = element("span", "story-place"), bar = element("div", "story-bar");
  said.setAttribute("role", "status");
  bar.setAttribute("role", "group");
  bar.setAttribute("aria-label", "Pages of the story");
  const previous = button("Previous", () => turnTo(here - 1), "story-previous");
  const next = button("Next", () => turnTo(here + 1), "story-next");
  const whole = button("All pages", () => showAll(reading), "quiet story-all");
  const turning = element("div", "story-turning"), more = element("div", "story-more"), frame = element("div", "story-frame");
  turning.append(previous, said, next);
  more.append(whole);
  bar.append(turning, more);
  story.before(frame);
  frame.append(story, bar);
  for (const page of pages) page.tabIndex = -1;

  /** @type {(page: number) => void} */
  const show = (page) => {
    here = page;
    pages.forEach((spread, n) => spread.classList.toggle("open", n === page));
    said.textContent = `Page ${page + 1} of ${pages.length}`;
    previous.setAttribute("aria-disabled", String(page === 0));
    next.setAttribute("aria-disabled", String(page === pages.length - 1));
    for (const picture of pages[page + 1]?.querySelectorAll("img") ?? []) picture.loading = "eager"; // next turn's
    tell();
  };

  /** @type {(page: number) => void} */
  const turnTo = (page) => {
    if (page < 0 || page >= pages.length || page === here) return;
    show(page);
    history.replaceState(null, "", `#${pages[page].id}`);
    if (frame.getBoundingClientRect().top < 0) frame.scrollIntoView();
  };

  /** @type {(column: boolean) => void} */
  const showAll = (column) => {
    reading = !column;
    frame.classList.toggle("one-at-a-time", reading);
    turning.hidden = column;
    whole.textContent = column ? "One page at a time" : "All pages";
    tell();
  };

  /** A link to a page, and back and forward, move there as links do: focus too. @type {(focus: boolean) => void} */
  const follow = (focus) => {
    const page = pages.findIndex(({ id }) => `#${id}` === location.hash);
    show(page < 0 ? Math.max(here, 0) : page);
    if (page >= 0 && focus) pages[page].focus();
  };

  /** @type {(by: number) => void} */
  const turnBy = (by) => { if (reading) turnTo(here + by); };
  addEventListener("hashchange", () => follow(true));
  turnByKeys(turnBy);
  turnBySwipes(story, turnBy);
  story.setAttribute("aria-live", "polite"); // a turned page is read out while focus stays on its button
  showAll(false);
  follow(location.hash !== "");
  return { frame, more, page: () => pages[here], isReading: () => reading, onTurn: (listener) => listeners.push(listener) };
};
