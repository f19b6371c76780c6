/* Lets a story fill the screen, where the browser can. */
/** @import { Reader } from "./reader.js" */
import { button } from "../site/element.js";
import { toggleFull } from "../site/full-screen.js";

/** @type {(reader: Reader) => void} */
export const openFull = ({ frame, more }) => {
  if (!document.fullscreenEnabled) return;
  const full = button("", () => toggleFull(frame), "quiet story-full");
  const show = () => { full.textContent = document.fullscreenElement ? "Leave full screen" : "Full screen"; };
  document.addEventListener("fullscreenchange", show);
  show();
  more.append(full);
};
