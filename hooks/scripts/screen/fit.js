/* Makes what stands on a slide as large as the screen allows, and never so large that it runs off. */
/** @import { Slides } from "./slides.js" */
import { element } from "../site/element.js";
import { all, part } from "../site/find.js";

const SIZES = [1.6, 1.45, 1.3, 1.15, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4];
const WIDE = 4.2; // times as wide as high: a figure that stands above the work and not beside it
const LETTERS = 0.99; // of the least size: what is rounded away does not count
// What a figure, or a table alone, has of the width beside the work, where the work has 5.
const SHARES = [6, 7.5, 10, 14], SHARES_OF_TABLE = [6, 4, 3];

/** Places on a clock are points, and those of a grid are as large as it makes them. */
const HOLDERS = ".told, .work, .table-frame, .field, .field:not(.clock-face, .grid) > .place, .tray .piece";

/** @type {(slide: HTMLElement) => boolean} */
const runsOff = (slide) => slide.scrollHeight > slide.clientHeight + 1 || slide.scrollWidth > slide.clientWidth + 1
  || all(slide, HOLDERS, HTMLElement).some((one) => (
    one.scrollHeight > one.clientHeight + 2 || one.scrollWidth > one.clientWidth + 2));

/** How large a figure's letters are beside the least that any may be; at most 1. @type {(slide: HTMLElement, drawings: SVGSVGElement[]) => number} */
const lettersOf = (slide, drawings) => {
  const least = parseFloat(getComputedStyle(part(slide, "h2", HTMLElement)).fontSize) * LETTERS;
  return Math.min(1, ...drawings.flatMap((drawing) => {
    const grown = drawing.getScreenCTM()?.a ?? 1;
    return all(drawing, "text", SVGElement).map((words) => parseFloat(getComputedStyle(words).fontSize) * grown / least);
  }));
};

/** A place keeps the room of the largest piece, so that nothing moves when one is put there. @type {(slide: HTMLElement) => void} */
const keepRoom = (slide) => {
  for (const board of all(slide, "[data-board]", HTMLElement)) {
    const pieces = all(board, ".tray .piece", HTMLElement);
    board.style.setProperty("--widest", `${Math.max(0, ...pieces.map((piece) => piece.offsetWidth))}px`);
    board.style.setProperty("--tallest", `${Math.max(0, ...pieces.map((piece) => piece.offsetHeight))}px`);
  }
};

/** Where so many or more stand in a place they are drawn smaller. */
const CROWD = 7;

/** So many copies of the widest piece in each place; what was added. @type {(board: HTMLElement, count: number) => Element[]} */
const fill = (board, count) => {
  const widest = all(board, ".tray .piece", HTMLElement).sort((one, other) => other.offsetWidth - one.offsetWidth)[0];
  return all(board, ".field:not(.clock-face, .field-squares, .field-points) .stands", HTMLElement).flatMap((stands) => {
    const copies = Array.from({ length: Math.max(0, count - stands.childElementCount) }, () => widest.cloneNode(true));
    stands.append(...copies);
    return /** @type {Element[]} */ (copies);
  });
};

/** What is said once a try was looked at; what takes it away again. @type {(board: HTMLElement) => () => void} */
const sayAll = (board) => {
  const tried = element("li", "", "="), told = [part(board, ".verdict", HTMLElement), part(board, ".found", HTMLElement)];
  const before = told.map(({ textContent }) => textContent);
  for (const one of told) one.textContent ||= "Not this time. What do you notice?";
  part(board, ".tries", HTMLElement).append(tried);
  return () => {
    told.forEach((one, n) => { one.textContent = before[n]; });
    tried.remove();
  };
};

/**
 * Whether nothing runs off either once a board is played: as many pieces in a place as any answer has, and a try below.
 * @type {(slide: HTMLElement) => boolean}
 */
const hasRoom = (slide) => all(slide, "[data-board]", HTMLElement).every((board) => {
  const most = Number(part(board, ".field", HTMLElement).dataset.most), unsay = sayAll(board);
  const has = [...new Set([Math.min(most, CROWD - 1), most])].every((count) => {
    const added = fill(board, count), fits = !runsOff(slide);
    for (const one of added) one.remove();
    return fits;
  });
  unsay();
  return has;
});

/** A picture keeps its shape in whatever room it has. @type {(picture: HTMLImageElement) => void} */
const shapeOf = (picture) => {
  if (picture.naturalHeight) picture.style.setProperty("--shape", String(picture.naturalWidth / picture.naturalHeight));
};

/** @typedef {{ above?: boolean, column?: boolean, share: number }} Arrangement above the work, or beside it, perhaps one below the other */

/** In the order in which they are tried. @type {(drawings: SVGSVGElement[]) => Arrangement[]} */
const arrangementsOf = (drawings) => {
  const beside = (drawings.length ? SHARES : SHARES_OF_TABLE).map((share) => ({ share })), over = { above: true, share: SHARES[0] };
  if (!drawings.length) return beside;
  const isWide = drawings.every(({ viewBox: { baseVal: { width, height } } }) => width > WIDE * height);
  return [...(isWide ? [over, ...beside] : [...beside, over]), ...SHARES.map((share) => ({ column: true, share }))];
};

/** Whether it fits. @type {(slide: HTMLElement) => boolean} */
const fit = (slide) => {
  const drawings = all(slide, ".screen-figures svg", SVGSVGElement), arrangements = arrangementsOf(drawings);
  /** @type {(arrangement: Arrangement, size: number) => void} */
  const arrange = ({ above = false, column = false, share }, size) => {
    slide.classList.toggle("figure-above", above);
    slide.classList.toggle("figures-in-column", column);
    slide.style.setProperty("--share", `${share}fr`);
    slide.style.setProperty("--fit", String(size));
    keepRoom(slide);
  };
  // Where there is no room for all, what fits with the largest letters; where nothing fits, what runs off least: it can be scrolled.
  let best = -Infinity, next = () => {};
  for (const arrangement of arrangements) {
    for (const size of SIZES) {
      arrange(arrangement, size);
      const off = runsOff(slide), worth = off ? slide.clientHeight - slide.scrollHeight - 1 : lettersOf(slide, drawings);
      if (worth === 1 && hasRoom(slide)) return true;
      if (worth > best) {
        best = worth;
        next = () => arrange(arrangement, size);
      }
    }
  }
  next();
  return best > 0;
};

/**
 * What it gives lays the slide out again if what was put on it runs off, or at once when it is another.
 * @type {(slides: Slides) => (isOther?: boolean) => void}
 */
export const openFit = ({ current, onShow }) => {
  let fits = true; // what could not be made to fit is not tried again with each piece
  const again = () => {
    fits = fit(current());
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
  return (isOther = false) => { if (isOther || (fits && runsOff(current()))) again(); };
};
