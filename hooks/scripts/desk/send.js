/* Sends changes to the desk one after the other, and keeps what could not be sent until it can. */

/**
 * What the desk says of a change.
 * @typedef {{ mark: string, undo: boolean, redo: boolean, form?: string, title?: string, hanging?: { box: string, html: string }[] }} Saved
 * @typedef {{ refused: string, mark?: string, difference?: string[] }} Refused
 * @typedef {{ [field: string]: unknown }} Asked
 */

/** The desk did not take a change: why, and how it answered. */
export class NotTaken extends Error {
  /** @param {Refused} refused @param {number} status */
  constructor(refused, status) {
    super(refused.refused);
    this.refused = refused;
    this.status = status;
  }
}

/** @type {(address: string, what: Asked) => Promise<any>} */
export const post = async (address, what) => {
  const answer = await fetch(address, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(what) });
  if (answer.ok) return answer.json();
  const refused = answer.headers.get("content-type")?.includes("json") ? await answer.json() : { refused: await answer.text() };
  throw new NotTaken(refused, answer.status);
};

/** What stands at an address of the desk, as text. @type {(address: string) => Promise<string>} */
export const read = async (address) => {
  const answer = await fetch(address);
  if (!answer.ok) throw new NotTaken({ refused: await answer.text() }, answer.status);
  return answer.text();
};

/** The address of a question about a page. @type {(path: string, source: string, more?: { [name: string]: string }) => string} */
export const about = (path, source, more = {}) => `${path}?${new URLSearchParams({ source, ...more })}`;

/** A part of a page that the desk drew. Its words went through the desk's templates. @type {(html: string) => DocumentFragment} */
export const drawn = (html) => {
  const made = document.createDocumentFragment(), { head, body } = new DOMParser().parseFromString(html, "text/html");
  made.append(...head.childNodes, ...body.childNodes); // a template that comes first is put into the head
  return made;
};
