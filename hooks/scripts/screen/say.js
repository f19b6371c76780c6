/* Says what has changed to those who cannot see it, one thing at a time. */
import { element } from "../site/element.js";

/** @typedef {(words: string) => void} Say */

/** @type {(screen: HTMLElement) => Say} */
export const openSay = (screen) => {
  const region = element("p", "only-heard");
  region.setAttribute("aria-live", "polite");
  screen.append(region);
  return (words) => { region.textContent = words; };
};
