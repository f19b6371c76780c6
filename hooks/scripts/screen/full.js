/* Lets the class screen fill the whole screen, where the browser can; and lets it begin afresh. */
/** @import { Memory } from "./memory.js" */
import { button } from "../site/element.js";
import { around } from "../site/find.js";
import { toggleFull } from "../site/full-screen.js";

const WAIT = 5000; // milliseconds in which a second tap means it

/** @type {(menu: HTMLElement, memory: Memory) => void} */
export const openFull = (menu, memory) => {
  if (document.fullscreenEnabled) {
    const full = button("Full screen", () => toggleFull(document.documentElement), "full");
    document.addEventListener("fullscreenchange", () => {
      full.textContent = document.fullscreenElement ? "Smaller" : "Full screen";
    });
    document.addEventListener("keydown", (event) => {
      if (event.key.toLowerCase() === "f" && !event.ctrlKey && !event.altKey && !event.metaKey && !around(event, "select, input")) {
        toggleFull(document.documentElement);
      }
    });
    menu.append(full);
  }
  let asked = false;
  const afresh = button("Begin again", () => {
    if (asked) {
      memory.clear();
      history.replaceState(null, "");
      location.reload();
      return;
    }
    asked = true;
    afresh.textContent = "Forget all that was tried?";
    setTimeout(() => { asked = false; afresh.textContent = "Begin again"; }, WAIT);
  }, "afresh");
  menu.append(afresh);
};
