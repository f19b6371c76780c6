/* Where the site stands: told by the script the page was given. */
const script = /** @type {HTMLScriptElement} */ (document.currentScript);

export const root = new URL("../", script.src);

/** From a memory stick pages may not fetch. */
export const fromStick = location.protocol === "file:";

/** An address within the site. @type {(address: string) => string} */
export const at = (address) => new URL(address, root).href;
