/*
 * Shows what a word means beside the word: under the pointer, on keyboard focus, or at a first tap (a second follows
 * the link). The card can be pointed at, stays until left, and goes with Escape. Without this the link leads to the
 * meanings at the foot of the page.
 */
import { element } from "../site/element.js";

const GRACE = 250; // time to move from the word to its card
/** @typedef {{ card: HTMLElement, owner: HTMLAnchorElement }} Shown */
/** @type {Shown | null} */
let shown = null;
let leaving = 0;
/** @type {{ link: HTMLAnchorElement, shown: boolean } | null} */
let tapped = null;

const hide = () => {
  clearTimeout(leaving);
  shown?.owner.removeAttribute("aria-describedby");
  shown?.card.remove();
  shown = null;
};

const stay = () => clearTimeout(leaving);
const leave = () => {
  clearTimeout(leaving);
  leaving = setTimeout(hide, GRACE);
};

/** @type {(shown: Shown) => void} */
const place = ({ card, owner }) => {
  const box = owner.getClientRects()[0] ?? owner.getBoundingClientRect();
  const room = document.documentElement.clientWidth - card.offsetWidth - 8;
  const below = box.bottom + 6, above = box.top - card.offsetHeight - 6;
  const fits = below + card.offsetHeight <= document.documentElement.clientHeight || above < 0;
  card.style.left = `${Math.max(8, Math.min(box.left, room)) + scrollX}px`;
  card.style.top = `${(fits ? below : above) + scrollY}px`;
};

/** @type {(link: HTMLAnchorElement) => void} */
const show = (link) => {
  stay();
  if (shown?.owner === link) return;
  hide();
  const term = document.getElementById(link.hash.slice(1));
  const meaning = term?.closest("dt, div, li")?.parentElement?.querySelector("dd") ?? term?.querySelector("dd");
  if (!term || !meaning) return;
  const card = element("div", "meaning-card");
  card.id = "meaning-card";
  card.setAttribute("role", "tooltip");
  const word = (term.querySelector("dt") ?? term).textContent ?? "";
  card.append(element("strong", "", word), meaning.textContent ?? "");
  card.addEventListener("mouseenter", stay);
  card.addEventListener("mouseleave", leave);
  (link.closest("main") ?? document.body).append(card); // inside a landmark, like all that is read
  shown = { card, owner: link };
  place(shown);
  link.setAttribute("aria-describedby", card.id);
};

/** @type {(link: HTMLAnchorElement) => void} */
const listen = (link) => {
  link.addEventListener("pointerenter", (event) => event.pointerType === "mouse" && show(link));
  link.addEventListener("pointerleave", (event) => {
    if (event.pointerType === "mouse" && document.activeElement !== link) leave();
  });
  link.addEventListener("pointerdown", (event) => {
    tapped = event.pointerType === "mouse" ? null : { link, shown: shown?.owner === link };
  });
  link.addEventListener("focus", () => show(link));
  link.addEventListener("blur", leave);
  link.addEventListener("click", (event) => {
    const first = tapped?.link === link && !tapped.shown;
    tapped = null;
    if (!first) return hide();
    event.preventDefault();
    show(link);
  });
};
/** @type {NodeListOf<HTMLAnchorElement>} */
const links = document.querySelectorAll("a.word[href^='#']");
links.forEach(listen);

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape") hide();
});
document.addEventListener("pointerdown", (event) => {
  const at = event.target;
  if (shown && at instanceof Node && !shown.card.contains(at) && !shown.owner.contains(at)) hide();
});
