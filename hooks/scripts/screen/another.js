/* Another one: the boards of a slide with other numbers, one set after the other, and then its own again. */
/** @import { BoardData } from "../board/state.js" */
import { button, element } from "../site/element.js";
import { all } from "../site/find.js";

/** @typedef {{ ask: string, boards: BoardData[], answers: string[] }} Numbers as render/screens/another.py gives them */

/**
 * @param {HTMLElement} slide
 * @param {(board: HTMLElement, place: number, set: number) => void} start plays one board of a set; the slide's own are 0
 */
export const openAnother = (slide, start) => {
  const boards = slide.querySelector(".boards"), ask = slide.querySelector(".ask"), told = slide.querySelector(".adult > div");
  const given = boards?.querySelector("[data-others]")?.textContent;
  if (!given || !boards || !ask || !told) return;
  /** @type {Numbers[]} */
  const others = JSON.parse(given);
  const own = { asked: [...ask.childNodes], told: [...told.childNodes], boards: all(slide, "[data-board] > script", HTMLElement)
    .map((one) => /** @type {BoardData} */ (JSON.parse(one.textContent ?? ""))) };
  let at = 0;

  const show = () => {
    const other = at ? others[at - 1] : null;
    ask.replaceChildren(...(other ? [other.ask] : own.asked));
    const answers = element("ol", "");
    answers.append(...(other?.answers ?? []).map((says) => element("li", "", says)));
    told.replaceChildren(...(other ? [answers] : own.told));
    all(slide, "[data-board]", HTMLElement).forEach((old, place) => {
      const data = (other ?? own).boards[place], board = element("div", `board board-${data.layout}`);
      const script = document.createElement("script");
      script.type = "application/json";
      script.textContent = JSON.stringify(data);
      board.dataset.board = "";
      board.append(script);
      old.replaceWith(board);
      start(board, place, at);
    });
  };
  const actions = element("div", "board-actions");
  actions.append(button("Another one", () => { at = (at + 1) % (others.length + 1); show(); }));
  boards.after(actions);
};
