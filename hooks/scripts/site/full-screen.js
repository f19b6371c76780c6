/* Fills the screen with a part of the page, or leaves it. */

/** @type {(part: Element) => void} */
export const toggleFull = (part) => {
  const change = document.fullscreenElement ? document.exitFullscreen() : part.requestFullscreen();
  change.catch(() => {}); // refused: the page stays as it is
};
