/* Searches the names an author may write, and copies one. Without this they are lists to open and read. */
import { button, element } from "../site/element.js";

/** @type {(words: string) => Promise<boolean>} */
const copy = async (words) => {
  try {
    await navigator.clipboard.writeText(words);
    return true;
  } catch {
    return false; // a browser that allows it to no page, or not to one opened from a disk
  }
};

/** @type {(code: HTMLElement, told: HTMLElement) => void} */
const select = (code, told) => {
  getSelection()?.selectAllChildren(code);
  told.textContent = "Selected: copy it with the keys you use for that.";
};

/** @type {(row: HTMLElement, told: HTMLElement) => void} */
const offerCopy = (row, told) => {
  const code = row.querySelector("code");
  if (!code) return;
  const words = code.textContent ?? "";
  const copies = button("Copy", async () => {
    if (await copy(words)) told.textContent = `Copied: ${words}`;
    else select(code, told);
  });
  copies.setAttribute("aria-label", `Copy ${words}`);
  code.after(copies);
};

/** @type {(list: HTMLDetailsElement, told: HTMLElement) => void} */
const offerCopies = (list, told) => {
  if (list.dataset.copies) return;
  list.dataset.copies = "offered";
  list.querySelectorAll("li").forEach((row) => offerCopy(row, told));
};

/** @type {(lists: HTMLDetailsElement[], asked: string) => number} */
const show = (lists, asked) => {
  const words = asked.toLowerCase().split(/\s+/).filter(Boolean);
  let shown = 0;
  for (const list of lists) {
    let here = 0;
    for (const row of list.querySelectorAll("li")) {
      const text = `${row.firstElementChild?.textContent} ${row.lastChild?.textContent}`.toLowerCase(); // not the button
      row.hidden = !words.every((word) => text.includes(word));
      if (!row.hidden) here += 1;
    }
    list.hidden = here === 0;
    list.open = words.length > 0 && here > 0;
    shown += here;
  }
  return shown;
};

/** @type {HTMLElement | null} */
const holder = document.querySelector("[data-names]");
if (holder) {
  const lists = [...holder.querySelectorAll("details")], told = element("p", "finder-status");
  told.setAttribute("role", "status");
  const label = element("label", "names-search", "Find a name "), box = element("input");
  box.type = "search";
  label.append(box);
  box.addEventListener("input", () => {
    const shown = show(lists, box.value);
    told.textContent = box.value.trim() ? `${shown} ${shown === 1 ? "name" : "names"}` : "";
  });
  for (const list of lists) list.addEventListener("toggle", () => list.open && offerCopies(list, told));
  holder.prepend(label, told);
}
