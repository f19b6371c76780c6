/* Puts each problem beside the box it belongs to, and all of them in a list above the form. */
import { all, part } from "../site/find.js";
import { button, element } from "../site/element.js";
import { keepPlace } from "./keep-place.js";

/** @typedef {{ box: string, line: number, message: string, fix: string }} Problem */

/** The narrowest box there is. @type {(box: string) => HTMLElement | null} */
const boxFor = (box) => {
  for (let id = box; id; id = id.slice(0, Math.max(0, id.lastIndexOf(".")))) {
    const found = document.getElementById(`problems-${id}`);
    if (found) return found;
  }
  return null;
};

/** Every fold around an element, from within. @type {(at: Element) => HTMLDetailsElement[]} */
const foldsAround = (at) => {
  const found = [];
  for (let fold = at.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) found.push(fold);
  return found;
};

/** @type {(list: HTMLElement) => void} */
export const goTo = (list) => {
  foldsAround(list).forEach((fold) => { fold.open = true; });
  const named = (/** @type {string} */ start) => document.getElementById(list.id.replace("problems-", start));
  const box = named("in-") ?? named("sort-") ?? list.parentElement;
  if (!(box instanceof HTMLElement)) return;
  if (!box.matches("input, textarea, select, button")) box.tabIndex = -1;
  box.focus();
  box.scrollIntoView({ block: "center" });
};

const clear = () => {
  all(document, ".beside-box", HTMLElement).forEach((list) => list.replaceChildren());
  all(document, "[aria-invalid]", HTMLElement).forEach((box) => box.removeAttribute("aria-invalid"));
  all(document, "[data-count]", HTMLElement).forEach((count) => count.replaceChildren());
};

/** @type {(list: HTMLElement) => void} */
const countAround = (list) => {
  const own = list.parentElement?.querySelector(":scope > details");
  const folds = [...foldsAround(list), ...(own instanceof HTMLDetailsElement ? [own] : [])];
  folds.forEach((fold) => {
    const count = fold.querySelector(":scope > summary [data-count]");
    if (count) count.textContent = String(Number.parseInt(count.textContent || "0", 10) + 1) + " wrong";
  });
};

/** @type {(count: number, of: string) => string} */
const inWords = (count, of) => (count ? `${count} ${count === 1 ? "problem" : "problems"} ${of}` : `No problems ${of}`);

/** @type {(problems: Problem[], elsewhere: number) => void} */
export const show = (problems, elsewhere) => {
  clear();
  const title = part(document, "#all-wrong-title", HTMLElement), counted = inWords(problems.length, "on this page");
  if (title.textContent !== counted) title.textContent = counted; // told aloud where it is another
  const every = part(document, "#all-wrong", HTMLElement), placeKept = keepPlace(every);
  every.replaceChildren();
  problems.forEach((problem) => {
    const list = boxFor(problem.box), line = element("li"), told = element("li", "", `${problem.message} `);
    told.append(element("span", "fix", `Fix: ${problem.fix}`));
    if (list) {
      list.append(told);
      countAround(list);
      document.getElementById(list.id.replace("problems-", "in-"))?.setAttribute("aria-invalid", "true");
      line.append(button(problem.message, () => goTo(list), "as-link"));
    } else {
      line.append(`Line ${problem.line}: ${problem.message} `, element("span", "fix", `Fix: ${problem.fix}`));
    }
    every.append(line);
  });
  placeKept()?.focus();
  part(document, "#wrong-elsewhere", HTMLElement).textContent = elsewhere ? inWords(elsewhere, "on other pages") : "";
};
