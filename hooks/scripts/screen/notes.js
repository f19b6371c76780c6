/* Keeps the adult's notes out of sight until they are asked for, and puts them away again when the slide is turned. */
/** @import { Slides } from "./slides.js" */
import { button } from "../site/element.js";
import { all, around } from "../site/find.js";

/** @typedef {{ onTurn: (listener: (shown: boolean) => void) => void }} Notes */

/** @type {(screen: HTMLElement, slides: Slides) => Notes} */
export const openNotes = (screen, { bar, current, onShow }) => {
  screen.classList.add("notes-away");
  let shown = false;
  /** @type {((shown: boolean) => void)[]} */
  const listeners = [];
  const toggle = button("Notes", () => set(!shown), "notes");
  toggle.setAttribute("aria-pressed", "false");
  bar.append(toggle);

  /** @type {(wanted: boolean) => void} */
  const set = (wanted) => {
    shown = wanted;
    toggle.setAttribute("aria-pressed", String(shown));
    screen.classList.toggle("notes-away", !shown);
    for (const notes of all(current(), ".adult", HTMLDetailsElement)) notes.open = shown;
    for (const listener of listeners) listener(shown);
  };
  onShow(() => {
    for (const notes of all(screen, ".adult", HTMLDetailsElement)) notes.open = false;
    set(false);
    toggle.disabled = !current().querySelector(".adult");
  });
  document.addEventListener("keydown", (event) => {
    if (event.key.toLowerCase() === "n" && !event.ctrlKey && !event.altKey && !event.metaKey && !toggle.disabled
      && !around(event, "select, input")) set(!shown);
  });
  return { onTurn: (listener) => listeners.push(listener) };
};
