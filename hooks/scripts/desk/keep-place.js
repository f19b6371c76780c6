/* The place of who works by keys, and what is half typed there, kept while a part of the page is drawn anew. */
import { all } from "../site/find.js";

export const TAKES_KEYS = "input, textarea, select, button, summary, a[href]";

/** Where the keys go now, so that it is found again in what is drawn anew: by its id, or by its place in what has one. @type {(form: HTMLElement) => (() => HTMLElement | null)} */
export const keepPlace = (form) => {
  const was = document.activeElement;
  if (!(was instanceof HTMLElement) || !form.contains(was)) return () => null;
  const holder = was.parentElement?.closest("[id]"), { id } = was, holderId = holder?.id ?? "";
  const at = holder ? all(holder, TAKES_KEYS, HTMLElement).indexOf(was) : 0;
  const typed = was.matches("input:not([type=checkbox]), textarea") && /** @type {HTMLInputElement} */ (was);
  const words = typed && typed.value !== typed.defaultValue ? typed.value : null, [from, to] = typed ? [typed.selectionStart, typed.selectionEnd] : [null, null];
  return () => {
    const now = document.getElementById(holderId), every = now ? all(now, TAKES_KEYS, HTMLElement) : [];
    if (now && !every.length) now.tabIndex = -1; // nothing in it takes keys any more: it does itself
    const found = (id ? document.getElementById(id) : null) ?? every[Math.min(at, every.length - 1)] ?? now;
    if (words === null || !(found instanceof HTMLInputElement || found instanceof HTMLTextAreaElement) || found.id !== id) return found;
    const isSaved = found.value === words;
    found.value = words;
    if (from !== null) found.setSelectionRange(from, to);
    if (!isSaved) found.dispatchEvent(new Event("input", { bubbles: true })); // typed since a change was sent: it is sent in its turn
    return found;
  };
};
