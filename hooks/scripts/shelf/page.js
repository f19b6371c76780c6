/* The page of the shortest shelf: which books a reader owns, for which year, and the answers worked out here. */
/** @import { BookNamed, Objective, YearQuestion } from "./answers.js" */
/** @import { Caps } from "./search.js" */
import { button, element } from "../site/element.js";
import { all } from "../site/find.js";
import { load } from "../site/load.js";
import { shelfAnswers } from "./answers.js";
import { keepOwned, readOwned } from "./owned.js";

/**
 * @typedef {{
 *   name: string, year: number, in_part: number, beyond: number, objectives: Objective[],
 *   books: [book: number, minutes: number, teaches: number[]][],
 * }} Packed a question that names books by their places
 * @typedef {{ books: BookNamed[], questions: Packed[], caps: Caps & { shown: number } }} ShelfData
 */

const MANY = 12; // books before there is a box to find one in

/** @type {(year: number) => string} */
const yearName = (year) => (year === 0 ? "Reception" : `Year ${year}`);

/** @type {(questions: Packed[]) => [HTMLElement, HTMLSelectElement]} */
const chooser = (questions) => {
  const line = element("p", "shelf-line"), label = element("label", "", "For"), choice = element("select");
  label.htmlFor = choice.id = "shelf-question";
  questions.forEach(({ year, name }, n) => {
    const option = element("option", "", `${yearName(year)}, ${name}`);
    option.value = String(n);
    choice.append(option);
  });
  line.append(label, choice);
  return [line, choice];
};

/**
 * A box to find a book in; what is ticked stays in sight.
 * @type {(boxes: Map<HTMLElement, HTMLInputElement>) => HTMLElement}
 */
const narrow = (boxes) => {
  const line = element("p", "shelf-line"), label = element("label", "", "Find a book"), box = element("input");
  label.htmlFor = box.id = "shelf-find";
  box.type = "search";
  box.autocomplete = "off";
  box.addEventListener("input", () => {
    const wanted = box.value.trim().toLowerCase();
    for (const [one, { checked }] of boxes) one.hidden = !checked && !one.textContent?.toLowerCase().includes(wanted);
  });
  line.append(label, box);
  return line;
};

/** @type {(books: BookNamed[], owned: Set<string>) => HTMLElement} */
const ticks = (books, owned) => {
  const field = element("fieldset", "shelf-books"), holder = element("div", "shelf-boxes");
  const boxes = new Map(books.map(([id, title]) => {
    const label = element("label"), box = element("input");
    Object.assign(box, { type: "checkbox", value: id, checked: owned.has(id) });
    label.append(box, element("span", "", title));
    return [label, box];
  }));
  holder.append(...boxes.keys());
  field.append(element("legend", "", "Books we own"));
  if (books.length > MANY) field.append(narrow(boxes));
  field.append(holder);
  return field;
};

/** @type {(place: HTMLElement, status: HTMLElement) => Promise<void>} */
const open = async (place, status) => {
  const data = /** @type {ShelfData} */ (await load("shelf-data")), answers = element("div", "shelf-answers");
  const questions = data.questions.filter(({ books }) => books.length).sort((a, b) => a.year - b.year);
  if (!questions.length) return;
  const books = new Map(data.books.map((book) => [book[0], book]));
  const owned = new Set(readOwned());
  /** @type {(question: Packed) => YearQuestion} */
  const named = (question) => ({ ...question, books: question.books.map(([n, ...rest]) => [data.books[n][0], ...rest]) });
  const [line, choice] = chooser(questions), field = ticks(data.books, owned);
  const boxes = all(field, ".shelf-boxes input", HTMLInputElement);

  const show = () => {
    const question = named(questions[Number(choice.value)]), ours = [...owned].filter((id) => books.has(id)).length;
    forget.hidden = !owned.size;
    status.textContent = "Working it out …";
    setTimeout(() => { // first let the tick be seen
      answers.replaceChildren(...shelfAnswers(question, owned, books, data.caps));
      status.textContent = `For ${yearName(question.year)}, ${question.name}, with ${ours} of ${data.books.length} books:`;
    });
  };
  const tick = () => {
    const unknown = [...owned].filter((id) => !books.has(id)); // a book may come back
    owned.clear();
    [...unknown, ...boxes.filter((box) => box.checked).map((box) => box.value)].forEach((id) => owned.add(id));
    keepOwned([...owned]);
    show();
  };
  const forget = button("Forget them", () => {
    boxes.forEach((box) => { box.checked = false; });
    owned.clear();
    tick();
    choice.focus();
  });
  field.querySelector(".shelf-boxes")?.addEventListener("change", tick);
  choice.addEventListener("change", show);
  place.querySelector(".shelf-without")?.remove();
  place.append(line, field, forget, status, answers);
  show();
};

/** @type {HTMLElement | null} */
const place = document.querySelector("[data-shelf]");
if (place) {
  const status = element("p", "shelf-status");
  status.setAttribute("role", "status");
  open(place, status).catch(() => {
    place.append(status);
    status.textContent = "The books could not be opened just now. Try again when you are connected.";
  });
}
