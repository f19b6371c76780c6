/* Goes from part to part of a page by keys: its headings, in their order. */
import { all } from "../site/find.js";

const PARTS = "#page-title, #content h2, #content h3, #content h4";

/** The heading after, or before, where the keys go now. @type {(by: number) => HTMLElement | undefined} */
const next = (by) => {
  const now = document.activeElement ?? document.body;
  const side = by > 0 ? Node.DOCUMENT_POSITION_FOLLOWING : Node.DOCUMENT_POSITION_PRECEDING;
  const seen = all(document, PARTS, HTMLElement).filter((one) => one.getClientRects().length && !one.closest(".only-heard"));
  const there = now === document.body ? seen : seen.filter((one) => now.compareDocumentPosition(one) & side);
  return there.at(by > 0 ? 0 : -1);
};

/** Alt with Page Down and Page Up. */
export const letGoFromPartToPart = () => {
  document.addEventListener("keydown", (event) => {
    if (!event.altKey || (event.key !== "PageDown" && event.key !== "PageUp")) return;
    const part = next(event.key === "PageDown" ? 1 : -1);
    if (!part) return;
    event.preventDefault();
    part.tabIndex = -1;
    part.focus();
    part.scrollIntoView({ block: "start" });
  });
};
