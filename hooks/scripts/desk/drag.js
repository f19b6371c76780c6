/* Moves an item of a list by dragging its handle: what the arrows beside it do by a click. */
import { around } from "../site/find.js";
import { placeOf } from "./form.js";

/** @type {(form: HTMLElement, change: (asked: import("./send.js").Asked) => void) => void} */
export const letDrag = (form, change) => {
  /** @type {HTMLElement | null} */
  let dragged = null;
  form.addEventListener("dragstart", (event) => {
    dragged = event.target instanceof Element && event.target.matches(".handle") ? around(event, ".item") : null;
    if (!dragged || !event.dataTransfer) return;
    event.dataTransfer.effectAllowed = "move";
    event.dataTransfer.setDragImage(dragged, 8, 8);
    dragged.classList.add("dragged");
  });
  form.addEventListener("dragover", (event) => {
    const over = around(event, ".item");
    if (dragged && over && over.parentElement === dragged.parentElement) event.preventDefault();
  });
  form.addEventListener("drop", (event) => {
    const over = around(event, ".item");
    if (!dragged || !over || over.parentElement !== dragged.parentElement || over === dragged) return;
    event.preventDefault();
    change({ do: "move", ...placeOf(dragged), to: Number(placeOf(over).loc.at(-1)) });
  });
  form.addEventListener("dragend", () => {
    dragged?.classList.remove("dragged");
    dragged = null;
  });
};
