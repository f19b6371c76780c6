/* Makes what stands on a slide as large as the screen allows, and never so large that it runs off. */
/** @import { Slides } from "./slides.js" */
import { element } from "../site/element.js";
import { all, part } from "../site/find.js";

const SIZES = [1.6, 1.45, 1.3, 1.15, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4];
const WIDE = 4.2; // times as wide as high: a figure that stands above the work and not beside it
const LETTERS = 0.99; // of the least size: what is rounded away does not count
// What a figure, or a table alone, has of the width beside the work, where the work has 5.
const SHARES = [6, 7.5, 10, 14], SHARES_OF_TABLE = [6, 4, 3];

/** @type {(slide: HTMLElement) => boolean} */
const runsOff = (slide) => slide.scrollHeight > slide.clientHeight + 1 || slide.scrollWidth > slide.clientWidth + 1
  || all(slide, ".told, .work, .table-frame, .field, .place", HTMLElement).some((one) => (
    one.scrollHeight > one.clientHeight + 2 || one.scrollWidth > one.clientWidth + 2));

/** Whether a figure's letters are smaller than any others may be. @type {(slide: HTMLElement, drawings: SVGSVGElement[]) => boolean} */
const isSmall = (slide, drawings) => {
  const least = parseFloat(getComputedStyle(part(slide, "h2", HTMLElement)).fontSize) * LETTERS;
  return drawings.some((drawing) => {
    const grown = drawing.getScreenCTM()?.a ?? 1;
    return all(drawing, "text", SVGElement).some((words) => parseFloat(getComputedStyle(words).fontSize) * grown < least);
  });
};

/** A place keeps the room of the largest piece, so that nothing moves when one is put there. @type {(slide: HTMLElement) => void} */
const keepRoom = (slide) => {
  for (const board of all(slide, "[data-board]", HTMLElement)) {
    const pieces = all(board, ".tray .piece", HTMLElement);
    board.style.setProperty("--widest", `${Math.max(0, ...pieces.map((piece) => piece.offsetWidth))}px`);
    board.style.setProperty("--tallest", `${Math.max(0, ...pieces.map((piece) => piece.offsetHeight))}px`);
  }
};

/**
 * Whether nothing runs off either once a board is played: as many pieces in a place as any answer has, and a try below.
 * @type {(slide: HTMLElement) => boolean}
 */
const hasRoom = (slide) => {
  /** @type {Element[]} */
  const added = [];
  for (const board of all(slide, "[data-board]", HTMLElement)) {
    const widest = all(board, ".tray .piece", HTMLElement).sort((one, other) => other.offsetWidth - one.offsetWidth)[0];
    const field = part(board, ".field", HTMLElement), most = Number(field.dataset.most);
    for (const stands of most > 1 ? all(field, ".stands", HTMLElement) : []) {
      while (widest && stands.childElementCount < most) {
        const copy = /** @type {HTMLElement} */ (widest.cloneNode(true));
        stands.append(copy);
        added.push(copy);
      }
    }
    const tried = element("li", "", "=");
    part(board, ".tries", HTMLElement).append(tried);
    added.push(tried);
  }
  const has = !runsOff(slide);
  for (const one of added) one.remove();
  return has;
};

/** A picture keeps its shape in whatever room it has. @type {(picture: HTMLImageElement) => void} */
const shapeOf = (picture) => {
  if (picture.naturalHeight) picture.style.setProperty("--shape", String(picture.naturalWidth / picture.naturalHeight));
};

/** @type {(slide: HTMLElement) => void} */
const fit = (slide) => {
  const drawings = all(slide, ".screen-figures svg", SVGSVGElement);
  const above = drawings.length > 0 && drawings.every(({ viewBox: { baseVal: { width, height } } }) => width > WIDE * height);
  const beside = (drawings.length ? SHARES : SHARES_OF_TABLE).map((share) => ({ above: false, share })), over = { above: true, share: SHARES[0] };
  const arrangements = !drawings.length ? beside : above ? [over, ...beside] : [...beside, over];
  /** @type {(arrangement: { above: boolean, share: number }, size: number) => void} */
  const arrange = (arrangement, size) => {
    slide.classList.toggle("figure-above", arrangement.above);
    slide.style.setProperty("--share", `${arrangement.share}fr`);
    slide.style.setProperty("--fit", String(size));
    keepRoom(slide);
  };
  /** The first that fits, and the first in which letters are large enough too. @type {(() => void)[]} */
  const fitting = [];
  for (const arrangement of arrangements) {
    for (const size of SIZES) {
      arrange(arrangement, size);
      if (runsOff(slide)) continue;
      const large = !isSmall(slide, drawings);
      if (large && hasRoom(slide)) return;
      fitting[large ? 1 : 0] ??= () => arrange(arrangement, size);
    }
  }
  // Where there is no room for all, what fits; where nothing fits, the smallest, and the slide can be scrolled.
  (fitting[1] ?? fitting[0] ?? (() => arrange(arrangements[0], SIZES[SIZES.length - 1])))();
};

/** @type {(slides: Slides) => void} */
export const openFit = ({ current, onShow }) => {
  const again = () => {
    fit(current());
    // What is not here yet has no size: with the last of them the slide is laid out again.
    const pending = all(current(), ".tray img", HTMLImageElement).filter(({ complete }) => !complete);
    Promise.allSettled(pending.map((picture) => picture.decode())).then(() => { if (pending.length) fit(current()); });
    for (const picture of all(current(), ".scene img", HTMLImageElement)) {
      picture.addEventListener("load", () => shapeOf(picture), { once: true });
      shapeOf(picture);
    }
  };
  onShow(again);
  addEventListener("resize", again);
  document.fonts.ready.then(again);
};
