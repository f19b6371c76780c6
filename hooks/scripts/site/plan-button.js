/* A button that puts a session or home activity into the plan, or takes it out. */
import { button } from "./element.js";
import { CHANGED, add, isIn, remove } from "./plan-list.js";

/** @type {WeakMap<Element, () => void>} */
const shown = new WeakMap();

/**
 * A button for the page of that name; with a title it can be told apart from others in a list when heard.
 * @type {(name: string, title?: string) => HTMLButtonElement}
 */
export const planButton = (name, title) => {
  const made = button("", () => (isIn(name) ? remove(name) : add(name)), "quiet plan-button");
  const show = () => {
    const inside = isIn(name);
    made.textContent = inside ? "Take out of my plan" : "Add to my plan";
    if (title) made.setAttribute("aria-label", `${made.textContent}: ${title}`);
    made.classList.toggle("in-plan", inside);
  };
  shown.set(made, show);
  show();
  return made;
};

document.addEventListener(CHANGED, () => {
  for (const one of document.querySelectorAll(".plan-button")) shown.get(one)?.();
});
