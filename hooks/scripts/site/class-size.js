/* A box for the number of children in the class. */
import { element } from "./element.js";

const MOST = 60;

/**
 * The box in its line; `taken` is what it says, or what is usual where it says nothing to use.
 * @type {(children: number, usual: number) => { line: HTMLElement, size: HTMLInputElement, taken: () => number }}
 */
export const classSize = (children, usual) => {
  const line = element("p", "class-size"), label = element("label", "", "Children in the class"), size = element("input");
  label.htmlFor = size.id = "class-size";
  Object.assign(size, { type: "number", min: "1", max: String(MOST), value: String(children) });
  Object.assign(size, { inputMode: "numeric", autocomplete: "off" });
  line.append(label, " ", size);
  return { line, size, taken: () => Math.min(MOST, Math.max(1, Number.parseInt(size.value, 10) || usual)) };
};
