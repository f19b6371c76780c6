/* The page of a plan: its ideas in order, what to get ready for all of them, to print and to share as an address. */
/** @import { Numbered } from "./materials.js" */
/** @import { Idea, Material } from "./sums.js" */
import { at, fromStick } from "../site/address.js";
import { button, element, link } from "../site/element.js";
import { all, part } from "../site/find.js";
import { load } from "../site/load.js";
import { CHANGED, ideas, keep } from "../site/plan-list.js";
import { addressOf, namesIn } from "./address.js";
import { planMaterials } from "./materials.js";

/** @typedef {{ materials: Material[], books: Record<string, string>, ideas: Record<string, Idea> }} PlanData */

const NO_ADDRESS = "From a memory stick a plan has no address to send: print it, or write down its sessions.";

/** @type {(year: number) => string} */
const yearName = (year) => (year === 0 ? "Reception" : `Year ${year}`);

/** @type {(words: string, act: () => void, heard?: string, className?: string) => HTMLButtonElement} */
const act = (words, does, heard = "", className = "quiet") => {
  const made = button(words, does, className);
  if (heard) made.append(element("span", "only-heard", ` ${heard}`));
  return made;
};

/** @type {(place: HTMLElement) => void} */
const start = (place) => {
  const about = part(place, ".plan-about", HTMLElement), holder = element("div", "plan-sheets");
  const status = element("p", "plan-status");
  status.setAttribute("role", "status");
  about.before(status, holder);

  const shared = new URLSearchParams(location.search).get("plan");
  const usual = Number(place.dataset.classSize);
  let children = usual, sent = shared === null ? null : namesIn(shared);
  /** @type {PlanData} */
  let data;

  const names = () => sent ?? ideas();
  const known = () => names().filter((name) => Object.hasOwn(data.ideas, name));
  /** @type {() => Numbered[]} */
  const numbered = () => known().map((name, n) => [n + 1, data.ideas[name]]);

  /** @type {(list: string[], focus?: () => HTMLElement | null | undefined) => void} */
  const change = (list, focus) => {
    keep(list);
    focus?.()?.focus();
  };

  /** @type {(name: string, by: number) => void} */
  const move = (name, by) => {
    const list = names(), from = list.indexOf(name);
    list.splice(from, 1);
    list.splice(from + by, 0, name);
    change(list, () => holder.querySelector(`[data-name="${CSS.escape(name)}"] [data-by="${by}"]`));
    status.textContent = `${data.ideas[name][0]} is now number ${from + by + 1}.`;
  };

  /** @type {(name: string) => void} */
  const remove = (name) => {
    const list = names(), from = list.indexOf(name);
    change(list.filter((other) => other !== name), () => {
      const links = all(holder, ".plan-ideas h3 a", HTMLElement);
      return links[Math.min(from, links.length - 1)];
    });
    const back = act("Put it back", () => {
      keep(list);
      status.textContent = "It is back.";
    });
    status.replaceChildren(`Taken out: ${data.ideas[name][0]}. `, back);
  };

  /** @type {(name: string, n: number, many: number) => HTMLElement} */
  const ideaItem = (name, n, many) => {
    const [title, book, year, minutes, groupSize, , toPrint, pages] = data.ideas[name];
    const item = element("li", "plan-idea"), heading = element("h3"), facts = element("p", "facts");
    item.dataset.name = name;
    heading.append(link(at(`${name}.html`), title));
    if (book) facts.append(element("span", "", data.books[book]));
    facts.append(element("span", `year year-${year}`, yearName(year)));
    facts.append(element("span", "", `${minutes} minutes`));
    const faces = element("p", "plan-faces");
    if (groupSize) faces.append(link(at(`${name}-screen.html`), "Class screen"));
    if (toPrint) {
      const print = link(at(name + toPrint), groupSize ? "Print the whole lesson" : "Print");
      print.append(element("span", "only-heard", ` ${title}`));
      faces.append(print, element("span", "count", `PDF, ${pages} page${pages === 1 ? "" : "s"}`));
    }
    item.append(heading, facts, faces);
    if (sent) return item;
    const acts = element("p", "plan-acts");
    /** @type {(words: string, by: number, end: boolean) => HTMLButtonElement} */
    const turn = (words, by, end) => {
      const made = act(words, () => { if (!end) move(name, by); }, title);
      made.dataset.by = String(by);
      made.setAttribute("aria-disabled", String(end));
      return made;
    };
    acts.append(turn("Earlier", -1, n === 0), turn("Later", 1, n === many - 1), act("Take out", () => remove(name), title));
    item.append(acts);
    return item;
  };

  const share = () => {
    const section = element("section", "plan-share"), line = element("p", "plan-address");
    const label = element("label", "", "The address of this plan"), box = element("input");
    label.htmlFor = box.id = "plan-address";
    box.readOnly = true;
    box.value = at(addressOf(known()));
    box.addEventListener("focus", () => box.select());
    line.append(label, box);
    if (fromStick) line.replaceChildren(element("span", "note", NO_ADDRESS));
    else if (navigator.clipboard) line.append(act("Copy it", async () => {
      await navigator.clipboard.writeText(box.value).catch(() => box.focus());
      status.textContent = "The address is copied. Whoever opens it sees this plan.";
    }));
    section.append(element("h2", "", "Share or print"), line);
    const acts = element("p", "actions");
    acts.append(act("Print", () => print(), "", ""));
    if (!sent) acts.append(act("Empty my plan", () => {
      const before = names();
      change([], () => about.querySelector("a"));
      status.replaceChildren("Your plan is empty. ", act("Put it back", () => keep(before)));
    }));
    section.append(acts);
    return section;
  };

  const sentLine = () => {
    const line = element("p", "note-box plan-sent", "Somebody sent you this plan. ");
    line.append(act(ideas().length ? "Add it to my plan" : "Make it my plan", () => {
      const list = [...ideas(), ...known()];
      sent = null;
      history.replaceState(null, "", location.pathname);
      keep(list);
      status.textContent = "It is in your plan now, on this device.";
    }, "", ""));
    return line;
  };

  const draw = () => {
    const list = known(), gone = names().length - list.length;
    holder.replaceChildren();
    about.hidden = list.length > 0;
    if (sent) holder.append(sentLine());
    const [many, are] = gone === 1 ? ["One idea", "is"] : [`${gone} ideas`, "are"];
    if (gone) holder.append(element("p", "note-box", `${many} of this plan ${are} no longer here.`));
    if (!list.length) return;
    const minutes = list.reduce((sum, name) => sum + data.ideas[name][3], 0);
    const first = element("section", "plan-list"), order = element("ol", "plan-ideas");
    const number = list.length === 1 ? "1 idea" : `${list.length} ideas`;
    first.append(element("h2", "", `${number}, ${minutes} minutes`), order);
    order.append(...list.map((name, n) => ideaItem(name, n, list.length)));
    /** @type {(size: number) => void} */
    const onSize = (size) => { children = size; };
    holder.append(first, ...planMaterials(data.materials, numbered(), { children, usual, onSize }), share());
  };

  const open = async () => {
    if (!names().length) return;
    try {
      data ??= /** @type {PlanData} */ (await load("plan-data"));
      draw();
    } catch {
      status.textContent = "The plan could not be opened just now. Try again when you are connected.";
    }
  };
  document.addEventListener(CHANGED, () => (data ? draw() : open()));
  open();
};

/** @type {HTMLElement | null} */
const place = document.querySelector("[data-plan]");
if (place) start(place);
