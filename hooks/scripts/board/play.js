/* Puts a board together: what a class does on it, what it has tried, and how many of the answers it has found. */
/** @import { Memory } from "../screen/memory.js" */
/** @import { Notes } from "../screen/notes.js" */
/** @import { Say } from "../screen/say.js" */
/** @import { BoardData, Kept } from "./state.js" */
import { button, element } from "../site/element.js";
import { openBeam } from "./beam.js";
import { openClock } from "./clock.js";
import { openDrag } from "./drag.js";
import { layOut } from "./layout.js";
import { openPick } from "./pick.js";
import { openState } from "./state.js";
import { tell } from "./told.js";

/** @typedef {{ memory: Memory, say: Say, notes: Notes, fit: () => void }} Screen what of the screen a board uses */

/** @type {(board: HTMLElement, name: string, screen: Screen) => void} */
export const play = (board, name, { memory, say, notes, fit }) => {
  /** @type {BoardData} */
  const data = JSON.parse(board.querySelector("script")?.textContent ?? "");
  const state = openState(data, /** @type {Kept | undefined} */ (memory.get(name)), (kept) => memory.set(name, kept));
  const many = new Set(Object.values(data.answers)).size;
  const draw = layOut(board, data, state);
  const beam = openBeam(board, data, state, notes), clock = openClock(board, data, state);
  const pick = openPick(board, data, state, say);
  openDrag(board, pick.drop);

  const actions = element("div", "board-actions"), verdict = element("p", "verdict");
  const look = button("Look together", () => {
    const words = beam ? beam.words() : tell(data, state), answer = data.answers[state.key()] ?? null;
    const already = answer !== null && state.tries().some((one) => one.answer === answer);
    state.record(words, answer);
    verdict.textContent = answer === null ? "Not this time. What do you notice?"
      : many === 1 ? "Yes." : already ? "Yes, and we have it already." : "Yes, that is one.";
    fit();
    say(`${words}. ${verdict.textContent}`);
  });
  const back = button("Take one back", () => { state.takeBack(); say("Taken back"); });
  const again = button("Start again", () => { state.startAgain(); say("All put back"); });
  actions.append(look, back, again, verdict);
  const tries = element("ol", "tries"), found = element("p", "found");
  tries.setAttribute("aria-label", "What we have tried");
  board.append(actions, found, tries);

  const refresh = () => {
    draw();
    beam?.refresh();
    clock?.();
    pick.refresh();
    back.disabled = !state.canTakeBack();
    look.disabled = again.disabled = state.isAsAtFirst();
    found.textContent = state.found() ? `Found: ${state.found()}` : "";
    tries.replaceChildren(...state.tries().map((one) => element("li", one.answer === null ? "" : "right", one.words)));
  };
  state.onChange(() => {
    verdict.textContent = "";
    refresh();
    fit();
  });
  refresh();
};
