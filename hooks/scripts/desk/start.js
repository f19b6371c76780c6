/* Begins a new page from the collection's page. */
import { part } from "../site/find.js";
import { NotTaken, post } from "./send.js";

/** @type {(form: HTMLFormElement) => void} */
export const letBegin = (form) => {
  const kind = part(form, "#new-kind", HTMLSelectElement), ofBook = part(form, "#new-of-book", HTMLElement);
  const showBook = () => { ofBook.hidden = !("ofBook" in (kind.selectedOptions[0]?.dataset ?? {})); };
  kind.addEventListener("change", showBook);
  showBook();
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const book = ofBook.hidden ? "" : part(form, "#new-book", HTMLSelectElement).value;
    post("/new", { kind: kind.value, book, title: part(form, "#new-title", HTMLInputElement).value }).then(
      ({ page }) => location.assign(page),
      (error) => {
        part(form, "#new-told", HTMLElement).textContent = error instanceof NotTaken ? error.message : "The desk does not answer.";
      },
    );
  });
};
