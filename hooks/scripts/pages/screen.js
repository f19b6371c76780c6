/* A class screen. */
import { play } from "../board/play.js";
import { openAnother } from "../screen/another.js";
import { openFit } from "../screen/fit.js";
import { openFull } from "../screen/full.js";
import { openMemory } from "../screen/memory.js";
import { openMore } from "../screen/more.js";
import { openNotes } from "../screen/notes.js";
import { openSay } from "../screen/say.js";
import { openSlides } from "../screen/slides.js";
import { openTimer } from "../screen/timer.js";
import { all } from "../site/find.js";

/** @type {(screen: HTMLElement) => void} */
const open = (screen) => {
  const memory = openMemory(screen.dataset.name ?? ""), say = openSay(screen), slides = openSlides(screen, memory, say);
  if (!slides) return;
  const notes = openNotes(screen, slides);
  openTimer(all(document, "[data-steps] li", HTMLElement), slides, memory, say);
  openFull(openMore(screen, slides), memory);
  const fit = openFit(slides), parts = { memory, say, notes, fit };
  all(document, "[data-board]", HTMLElement).forEach((board, n) => play(board, `board ${n}`, parts));
  const names = new Map(all(document, "[data-board]", HTMLElement).map((board, n) => [board, n]));
  for (const slide of all(document, ".slide-activity", HTMLElement)) {
    const first = names.get(/** @type {HTMLElement} */ (slide.querySelector("[data-board]"))) ?? 0;
    openAnother(slide, (board, place, set) => {
      play(board, `board ${first + place}${set ? ` other ${set}` : ""}`, parts);
      fit(true);
    });
  }
  slides.show();
};

/** @type {HTMLElement | null} */
const screen = document.querySelector("[data-screen]");
if (screen) open(screen);
