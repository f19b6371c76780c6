/* Loads a data file of the site once. From a memory stick, where pages may not fetch, its script twin is loaded. */
import { at, fromStick } from "./address.js";

/** @type {Map<string, Promise<unknown>>} */
const asked = new Map();

/** @type {(name: string) => Promise<unknown>} */
const fetched = async (name) => {
  const answer = await fetch(at(`${name}.json`));
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return answer.json();
};

/** @type {(name: string) => Promise<unknown>} */
const scripted = (name) => new Promise((resolve, reject) => {
  const script = document.createElement("script");
  script.src = at(`${name}.js`);
  script.onload = () => resolve(/** @type {any} */ (window).storymathsData[name]); // where data files put what they hold
  script.onerror = () => reject(new Error(name));
  document.head.append(script);
});

/** What the file holds; whoever asks knows its form. @type {(name: string) => Promise<unknown>} */
export const load = (name) => {
  const data = asked.get(name) ?? (fromStick ? scripted(name) : fetched(name));
  asked.set(name, data);
  data.catch(() => asked.delete(name));
  return data;
};
