/* The form of a page: what is typed, chosen, added, moved or taken out in it becomes a change to the page. */
import { all, around, part } from "../site/find.js";
import { keepPlace, TAKES_KEYS } from "./keep-place.js";
import { drawn } from "./send.js";

const PAUSE = 900;

/**
 * @typedef {import("./send.js").Asked} Asked
 * @typedef {(asked: Asked) => void} Change
 */

/** @type {(value: string | undefined) => (string | number)[]} */
const read = (value) => JSON.parse(value ?? "[]");

/** Where the value around an element stands. @type {(element: Element) => { loc: (string | number)[], activity: number | null }} */
export const placeOf = (element) => {
  const box = element.closest("[data-loc]"), activity = element.closest("[data-activity]");
  return {
    loc: box instanceof HTMLElement ? read(box.dataset.loc) : [],
    activity: activity instanceof HTMLElement ? Number(activity.dataset.activity) : null,
  };
};

/** @type {(element: Element) => { section: number, part: number }} */
const partOf = (element) => {
  const section = element.closest("[data-section]"), inside = element.closest("[data-part]");
  return {
    section: section instanceof HTMLElement ? Number(section.dataset.section) : 0,
    part: inside instanceof HTMLElement ? Number(inside.dataset.part) : 0,
  };
};

/** An objective with the parts that are ticked. @type {(box: Element, code: string) => string} */
const withParts = (box, code) => {
  const parts = all(box, "[data-objective-part]", HTMLInputElement).filter((one) => one.checked).map((one) => one.value);
  const bare = code.split(":")[0].trim();
  return parts.length ? `${bare}: ${parts.join(", ")}` : bare;
};

/** @type {(element: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement) => Asked | null} */
const whatWasTyped = (element) => {
  const place = placeOf(element), { section, part: number } = partOf(element);
  if ("type" in element.dataset) return { do: "type", ...place, text: element.value };
  if ("words" in element.dataset) return { do: "write", section, part: number, text: element.value };
  if ("data" in element.dataset) return { do: "write-activity", activity: place.activity, text: element.value };
  if ("task" in element.dataset) {
    const [kind, task] = element.value.split(":");
    return kind ? { do: "write-activity", activity: place.activity, kind, task } : null;
  }
  if ("add" in element.dataset) return element.value.trim() ? { do: "add", ...place, text: element.value } : null;
  if ("sortOf" in element.dataset) return { do: "turn", ...place, sort: element.value ? Number(element.value) : null };
  if ("objectivePart" in element.dataset) {
    const box = element.closest("[data-loc]");
    const code = box && part(box, "[data-type]", HTMLInputElement).value;
    return box && code ? { do: "type", ...place, text: withParts(box, code) } : null;
  }
  return null;
};

/** What a button asks for. @type {(button: HTMLElement) => Asked | null} */
const whatWasPressed = (button) => {
  const place = placeOf(button), { section, part: number } = partOf(button), by = Number(button.dataset.by);
  switch (button.dataset.do) {
    case "add": {
      const key = button.parentElement?.querySelector("input, select");
      return { do: "add", ...place, key: key instanceof HTMLInputElement || key instanceof HTMLSelectElement ? key.value : null };
    }
    case "put": return { do: "type", ...place, text: button.dataset.text };
    case "remove": return { do: "remove", ...place };
    case "move": return { do: "move", ...place, to: Number(place.loc.at(-1)) + by };
    case "move-section": return { do: "move-section", section, to: section - 1 + by };
    case "remove-section": return { do: "remove-section", section };
    case "remove-activity": return { do: "remove-activity", section, part: number };
    case "add-section": return { do: "add-section", name: part(document, "#new-section", HTMLInputElement).value };
    case "begin-activity": {
      const chosen = button.parentElement && part(button.parentElement, "select", HTMLSelectElement).value;
      const [kind, task] = (chosen ?? "").split(":");
      return { do: "begin-activity", section, part: number, kind, task };
    }
    default: return null;
  }
};

/** A heading becomes a box to type another name in. @type {(button: HTMLElement, change: Change) => void} */
const rename = (button, change) => {
  const bar = button.closest(".part-bar"), heading = bar && part(bar, "h3", HTMLElement);
  if (!heading) return;
  const box = document.createElement("input"), { section } = partOf(button), old = heading.textContent ?? "";
  box.value = old;
  box.setAttribute("aria-label", `Another name for ${old}`);
  const done = (/** @type {boolean} */ keep) => {
    box.replaceWith(heading);
    if (keep && box.value.trim() && box.value !== old) change({ do: "rename-section", section, name: box.value });
  };
  let left = false;
  box.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== "Escape") return;
    left = true;
    done(event.key === "Enter");
    button.focus(); // whoever goes on elsewhere is left there
  });
  box.addEventListener("blur", () => { if (!left) done(true); });
  heading.replaceWith(box);
  box.select();
  box.focus();
};

/** A place to write, where an activity has no words beside it. @type {(button: HTMLElement) => void} */
const writeHere = (button) => {
  const box = document.createElement("textarea");
  box.dataset.words = "";
  box.rows = 3;
  box.setAttribute("aria-label", "Words here");
  button.replaceWith(box);
  box.focus();
};

/** Every task there is, to choose from; the desk sends them once. @type {(select: HTMLSelectElement, chosen: string) => void} */
const offerTasks = (select, chosen) => {
  const tasks = document.getElementById("task-options");
  if (select.options.length > 1 || !(tasks instanceof HTMLTemplateElement)) return;
  select.append(tasks.content.cloneNode(true));
  select.value = chosen;
};

/** Fills in what the desk leaves to be filled in here. @type {(form: HTMLElement) => void} */
export const finish = (form) => {
  all(form, "select[data-task]", HTMLSelectElement).forEach((one) => offerTasks(one, one.dataset.chosen ?? ""));
};

/** Listens to the form for good: what is drawn anew in it later is heard too. @type {(form: HTMLElement, change: Change) => void} */
export const listen = (form, change) => {
  let pause = 0;
  /** @type {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement | null} */
  let typing = null;
  /** @type {WeakMap<Element, string>} */
  const sent = new WeakMap();
  /** @type {(element: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement) => void} */
  const take = (element) => {
    clearTimeout(pause);
    typing = null;
    const asked = element.isConnected ? whatWasTyped(element) : null;
    const now = JSON.stringify(asked);
    if (!asked || sent.get(element) === now) return;
    sent.set(element, now);
    if (asked.do === "add") element.value = "";
    change(asked);
  };
  const flush = () => { if (typing) take(typing); };
  form.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement) || target.type === "checkbox") return;
    if ("wholeWord" in target.dataset || "add" in target.dataset) return; // half a name is none
    if (!("type" in target.dataset || "words" in target.dataset || "data" in target.dataset)) return;
    clearTimeout(pause);
    typing = target;
    pause = window.setTimeout(flush, PAUSE);
  });
  form.addEventListener("toggle", ({ target }) => {
    if (target instanceof Element && target.matches(".begin[open]")) offerTasks(part(target, "select", HTMLSelectElement), "balance:teams");
  }, true);
  form.addEventListener("change", ({ target }) => {
    if (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) take(target);
  });
  form.addEventListener("keydown", (event) => {
    const { target } = event;
    if (event.key === "Enter" && target instanceof HTMLInputElement && "add" in target.dataset) take(target);
    if (event.altKey && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
      const item = around(event, ".item"), by = event.key === "ArrowUp" ? "-1" : "1";
      const button = item && all(item, "[data-do=move]", HTMLButtonElement).filter((one) => one.closest(".item") === item).find((one) => one.dataset.by === by);
      if (!button || button.disabled) return;
      event.preventDefault();
      flush();
      button.click();
    }
  });
  form.addEventListener("click", (event) => {
    const button = around(event, "[data-do]");
    if (!button) return;
    flush();
    if (button.dataset.do === "rename-section") return rename(button, change);
    if (button.dataset.do === "more-words") return writeHere(button);
    const asked = whatWasPressed(button);
    if (asked) change(asked);
  });
};

/** Which folds are open, by their names. @type {(form: HTMLElement) => Set<string>} */
const openFolds = (form) => new Set(all(form, "details[open][id]", HTMLDetailsElement).map((one) => one.id));

/** The form as the desk drew it anew: folds stay open, and who was in a box stays in it. @type {(form: HTMLElement, html: string, go: string) => void} */
export const redraw = (form, html, go) => {
  const placeKept = keepPlace(form), open = openFolds(form), top = window.scrollY;
  form.replaceChildren(drawn(html));
  finish(form);
  all(form, "details[id]", HTMLDetailsElement).forEach((one) => { if (open.has(one.id)) one.open = true; });
  const kept = placeKept(), wanted = (go && document.getElementById(go)) || kept;
  window.scrollTo({ top });
  if (!wanted) return;
  for (let fold = wanted.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) fold.open = true;
  if (go) all(wanted, "details", HTMLDetailsElement).slice(0, 1).forEach((one) => { one.open = true; });
  const inside = wanted.matches(TAKES_KEYS) ? wanted : wanted.querySelector("input, textarea, select, summary") ?? wanted;
  if (inside instanceof HTMLElement) inside.focus();
};
