/* Makes what stands on a slide as large as the screen allows, and never so large that it runs off. */
/** @import { Slides } from "./slides.js" */
import { all } from "../site/find.js";

const SIZES = [1.6, 1.45, 1.3, 1.15, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4];
const WIDE = 4.2; // times as wide as high: a figure that stands above the work and not beside it

/** @type {(slide: HTMLElement) => boolean} */
const runsOff = (slide) => slide.scrollHeight > slide.clientHeight + 1 || slide.scrollWidth > slide.clientWidth + 1
  || all(slide, ".told, .work, .table-frame, .field, .place", HTMLElement).some((one) => (
    one.scrollHeight > one.clientHeight + 2 || one.scrollWidth > one.clientWidth + 2));

/** A place keeps the room of the largest piece, so that nothing moves when one is put there. @type {(slide: HTMLElement) => void} */
const keepRoom = (slide) => {
  for (const board of all(slide, "[data-board]", HTMLElement)) {
    const pieces = all(board, ".tray .piece", HTMLElement);
    board.style.setProperty("--widest", `${Math.max(0, ...pieces.map((piece) => piece.offsetWidth))}px`);
    board.style.setProperty("--tallest", `${Math.max(0, ...pieces.map((piece) => piece.offsetHeight))}px`);
  }
};

/** A picture keeps its shape in whatever room it has. @type {(picture: HTMLImageElement) => void} */
const shapeOf = (picture) => {
  if (picture.naturalHeight) picture.style.setProperty("--shape", String(picture.naturalWidth / picture.naturalHeight));
};

/** @type {(slide: HTMLElement) => void} */
const fit = (slide) => {
  const boxes = all(slide, ".screen-figures svg", SVGSVGElement).map((drawing) => drawing.viewBox.baseVal);
  const above = boxes.length > 0 && boxes.every(({ width, height }) => width > WIDE * height);
  // Where nothing fits, the smallest stays, arranged as it is best read, and the slide can be scrolled.
  for (const arrangement of boxes.length ? [above, !above, above] : [false]) {
    slide.classList.toggle("figure-above", arrangement);
    for (const size of SIZES) {
      slide.style.setProperty("--fit", String(size));
      keepRoom(slide);
      if (!runsOff(slide)) return;
    }
  }
};

/** @type {(slides: Slides) => void} */
export const openFit = ({ current, onShow }) => {
  const again = () => {
    fit(current());
    for (const picture of all(current(), ".scene img", HTMLImageElement)) {
      picture.addEventListener("load", () => shapeOf(picture), { once: true });
      shapeOf(picture);
    }
  };
  onShow(again);
  addEventListener("resize", again);
  document.fonts.ready.then(again);
};
