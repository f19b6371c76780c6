/* Finds elements that are surely there, and of which kind they are. */

/**
 * The element a page is known to have; an error names what is missing.
 * @type {<Kind extends Element>(within: ParentNode, selector: string, kind: new () => Kind) => Kind}
 */
export const part = (within, selector, kind) => {
  const found = within.querySelector(selector);
  if (!(found instanceof kind)) throw new Error(`There is no ${selector}.`);
  return found;
};

/** @type {<Kind extends Element>(within: ParentNode, selector: string, kind: new () => Kind) => Kind[]} */
export const all = (within, selector, kind) => (
  [...within.querySelectorAll(selector)].flatMap((one) => (one instanceof kind ? [one] : [])));

/**
 * The nearest element around where an event happened.
 * @type {(event: Event, selector: string) => HTMLElement | null}
 */
export const around = (event, selector) => {
  const found = event.target instanceof Element ? event.target.closest(selector) : null;
  return found instanceof HTMLElement ? found : null;
};
