/* Works out a sum with the numbers a reader has found in their own book. They are kept nowhere. */
import { workOut } from "./sums.js";
import { button, element } from "../site/element.js";
import { all, part } from "../site/find.js";

/** @type {(form: HTMLFormElement) => void} */
const open = (form) => {
  const boxes = all(form, "input", HTMLInputElement), answer = part(form, "output", HTMLOutputElement);
  const { sum = "", nouns = "[]" } = form.dataset;
  const show = () => {
    if (!form.reportValidity()) return;
    const [first = "", ...rest] = workOut(sum, boxes.map((box) => box.valueAsNumber), JSON.parse(nouns));
    answer.replaceChildren(element("strong", "", first), ...rest.flatMap((line) => [element("br"), line]));
  };
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    show();
  });
  form.addEventListener("input", () => answer.replaceChildren());
  answer.before(button("Work it out", show, ""));
  form.hidden = false;
};

for (const form of all(document, "form[data-sum]", HTMLFormElement)) open(form);
