/* What a class screen remembers on this device: where the class is, what it has tried. Nothing leaves the device. */
import { root } from "../site/address.js";

/** @typedef {{ get: (name: string) => unknown, set: (name: string, value: unknown) => void, clear: () => void }} Memory */

/** @type {(key: string) => Record<string, unknown>} */
const read = (key) => {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? "{}");
    if (kept && typeof kept === "object" && !Array.isArray(kept)) return kept;
  } catch { /* unreadable or refused: it begins afresh */ }
  return {};
};

/** The memory of the screen of that name. @type {(name: string) => Memory} */
export const openMemory = (name) => {
  const key = `class screen ${name} of ${root.pathname}`;
  let kept = read(key);
  const write = () => {
    try {
      if (Object.keys(kept).length) localStorage.setItem(key, JSON.stringify(kept));
      else localStorage.removeItem(key);
    } catch { /* private windows may refuse: then it lasts as long as the page */ }
  };
  return {
    get: (part) => kept[part],
    set: (part, value) => { kept[part] = value; write(); },
    clear: () => { kept = {}; write(); },
  };
};
