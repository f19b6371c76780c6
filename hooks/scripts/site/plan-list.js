/* Keeps a short list of sessions on this device and nowhere else. */
import { root } from "./address.js";

export const CHANGED = "plan-changed";
const key = `plan of ${root.pathname}`;
/** @type {string[]} */
let unkept = []; // when the browser keeps nothing, the list lasts as long as the page

const tell = () => document.dispatchEvent(new CustomEvent(CHANGED));

/** @type {() => string[]} */
export const ideas = () => {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(kept) ? kept.filter((name) => typeof name === "string") : [];
  } catch {
    return unkept;
  }
};

/** @type {(list: string[]) => void} */
export const keep = (list) => {
  unkept = [...new Set(list)];
  try {
    localStorage.setItem(key, JSON.stringify(unkept));
  } catch { /* private windows may refuse */ }
  tell();
};

/** @type {(name: string) => boolean} */
export const isIn = (name) => ideas().includes(name);

/** @type {(name: string) => void} */
export const add = (name) => keep([...ideas(), name]);

/** @type {(name: string) => void} */
export const remove = (name) => keep(ideas().filter((other) => other !== name));

/**
 * The name a plan keeps a page under: its address from the root, without the ending.
 * @type {(address: string) => string}
 */
export const nameOf = (address) => {
  const path = decodeURI(new URL(address, root).pathname);
  return path.slice(decodeURI(root.pathname).length).replace(/\.html$/, "");
};

addEventListener("storage", (event) => {
  if (event.key === key) tell();
});
addEventListener("pageshow", (event) => {
  if (event.persisted) tell();
});
