/* Makes elements. Words are put in as text and never read as HTML. */

/** @type {<Name extends keyof HTMLElementTagNameMap>(name: Name, className?: string, text?: string) => HTMLElementTagNameMap[Name]} */
export const element = (name, className, text) => {
  const made = document.createElement(name);
  if (className) made.className = className;
  if (text !== undefined) made.textContent = text;
  return made;
};

/** @type {(words: string, act: () => void, className?: string) => HTMLButtonElement} */
export const button = (words, act, className = "quiet") => {
  const made = element("button", className, words);
  made.type = "button";
  made.addEventListener("click", act);
  return made;
};

/** @type {(address: string, words: string, className?: string) => HTMLAnchorElement} */
export const link = (address, words, className) => {
  const made = element("a", className, words);
  made.href = address;
  return made;
};
