/* Draws a board from its state: the tray, the places, and what stands in them. */
/** @import { BoardData, Piece, Place, State } from "./state.js" */
import { element } from "../site/element.js";

/** @type {(className: string, words?: string) => HTMLButtonElement} */
const plainButton = (className, words) => Object.assign(element("button", className, words), { type: "button" });

const SVG = "http://www.w3.org/2000/svg";

/** @type {(course: string) => SVGElement} */
const shapeDrawn = (course) => {
  const drawing = document.createElementNS(SVG, "svg"), path = document.createElementNS(SVG, "path");
  drawing.setAttribute("viewBox", "0 0 100 100");
  drawing.setAttribute("aria-hidden", "true");
  path.setAttribute("d", course);
  drawing.append(path);
  return drawing;
};

/** @type {(piece: Piece, from?: string) => HTMLButtonElement} */
const pieceButton = (piece, from = "") => {
  const made = plainButton("piece");
  Object.assign(made.dataset, { piece: piece.id, from, sort: piece.sort, look: piece.look });
  made.setAttribute("aria-pressed", "false");
  if (piece.picture) {
    const picture = Object.assign(element("img"), { src: piece.picture, alt: "" });
    picture.draggable = false;
    made.append(picture);
  }
  if (piece.outline) made.append(shapeDrawn(piece.outline));
  made.disabled = piece.stays;
  made.append(element("span", "piece-name", piece.name));
  if (piece.shows) made.append(element("span", "piece-shows", piece.shows));
  return made;
};

/** @type {(words: string, place: string, className?: string) => HTMLButtonElement} */
const putButton = (words, place, className = "put") => {
  const put = plainButton(className, words);
  put.disabled = true;
  put.dataset.place = place;
  return put;
};

/** @type {(place: Place) => { box: HTMLElement, stands: HTMLElement, put: HTMLElement }} */
const placeBox = (place) => {
  const box = element("div", "place"), put = putButton(place.name, place.id), stands = element("div", "stands");
  Object.assign(box.dataset, { place: place.id, takes: place.takes, turn: place.turn });
  box.classList.add(...place.marks);
  box.append(put, stands);
  return { box, stands, put };
};

/**
 * Rows of squares, or of points where lines cross, from the top, with what stands before each row and below each column.
 * @type {(field: HTMLElement, data: BoardData, boxes: HTMLElement[]) => void}
 */
const layGrid = (field, { columns, rows }, boxes) => {
  field.classList.add("grid");
  field.style.setProperty("--across", String(columns.length));
  field.style.setProperty("--down", String(rows.length));
  rows.forEach((name, row) => {
    const some = boxes.slice(row * columns.length, (row + 1) * columns.length);
    for (const box of some) box.style.setProperty("--up", String(rows.length - 1 - row));
    field.append(element("span", "grid-name", name), ...some);
  });
  field.append(element("span", "grid-name"), ...columns.map((name) => element("span", "grid-name", name)));
};

/**
 * Lays the board out; what it gives draws what stands where.
 * @type {(board: HTMLElement, data: BoardData, state: State) => () => void}
 */
export const layOut = (board, data, state) => {
  if (data.says) board.append(element("p", "board-says child", data.says));
  const tray = element("div", "tray"), spare = element("div", "stands"), field = element("div", `field field-${data.layout}`);
  tray.dataset.place = "";
  tray.append(spare, putButton("Put it back", "", "put put-back"));
  const boxes = data.places.map((place) => ({ place, ...placeBox(place) }));
  if (data.columns.length) layGrid(field, data, boxes.map(({ box }) => box));
  else if (data.layout === "sentence") {
    boxes.forEach(({ box }, n) => field.append(element("span", "between", data.between[n] ?? ""), box));
    field.append(element("span", "between", data.between[boxes.length] ?? ""));
  } else field.append(...boxes.map(({ box }) => box));
  field.classList.toggle("one-each", data.places.every(({ holds }) => holds === 1));
  const most = Object.keys(data.answers).flatMap((key) => key.split("|").map((place) => place.split(",").length));
  field.dataset.most = String(Math.max(...most)); // in one place of any answer
  board.append(field, tray);

  return () => {
    spare.replaceChildren(...data.pieces.filter(({ stays }) => !stays).map((piece) => {
      const made = pieceButton(piece), left = state.left(piece.id);
      if (Number.isFinite(left) && Number(piece.copies) > 1) made.append(element("span", "piece-left", `× ${left}`));
      made.disabled = left < 1 && data.layout !== "clock";
      return made;
    }));
    for (const { place, box, stands, put } of boxes) {
      const standing = state.standing(place.id), names = standing.map(({ name }) => name).join(", ");
      stands.replaceChildren(...standing.map((piece) => pieceButton(piece, place.id)));
      box.classList.toggle("filled", standing.length > 0);
      put.setAttribute("aria-label", `${place.name}${names ? `, holds ${names}` : ""}`);
    }
  };
};
