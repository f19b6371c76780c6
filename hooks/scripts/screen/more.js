/* What a teacher seldom needs, folded away at the end of the bar: the year, the whole screen, the keys, beginning afresh. */
/** @import { Slides } from "./slides.js" */
import { button, element } from "../site/element.js";
import { part } from "../site/find.js";

const KEYS = [
  ["→, Page Down, space", "the next screen"],
  ["←, Page Up", "the screen before"],
  ["Home, End", "the first and the last"],
  ["N", "the notes for the adult"],
  ["F", "the whole screen, and back"],
  ["Tab, Enter, arrows", "on a board: choose a card, then its place"],
  ["Esc", "let the card go"],
  ["?", "these keys"],
];

/** @type {() => HTMLDialogElement} */
const keyHelp = () => {
  const help = element("dialog", "keys"), list = element("dl");
  help.setAttribute("aria-label", "Keys");
  for (const [keys, what] of KEYS) list.append(element("dt", "", keys), element("dd", "", what));
  help.append(list, button("Close", () => help.close()));
  return help;
};

/**
 * The menu, for others to add to.
 * @type {(screen: HTMLElement, slides: Slides) => HTMLElement}
 */
export const openMore = (screen, { bar, year, choose, onShow }) => {
  const more = element("details", "more"), menu = element("div", "menu"), help = keyHelp();
  more.append(element("summary", "", "More"), menu);
  bar.append(more);
  screen.append(help);
  const years = screen.querySelector("template[data-years]");
  if (years instanceof HTMLTemplateElement) {
    const which = element("select", "year-shown");
    which.setAttribute("aria-label", "For the class of");
    which.append(years.content.cloneNode(true));
    which.value = year;
    which.addEventListener("change", () => choose(which.value));
    menu.append(which);
  }
  menu.append(button("Keys", () => help.showModal(), "keys-button"));
  const plan = part(screen, ".screen-top a", HTMLAnchorElement);
  menu.append(plan);
  const close = () => { more.open = false; };
  menu.addEventListener("click", (event) => { if (event.target instanceof HTMLButtonElement && !event.target.matches(".afresh")) close(); });
  onShow(close);
  document.addEventListener("keydown", (event) => {
    if (event.key === "?" && !help.open) help.showModal();
    else if (event.key === "Escape" && more.open) close();
  });
  return menu;
};
