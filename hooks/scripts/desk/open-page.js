/* A page that is open at the desk: its form, its problems, its look and its earlier states go together. */
import { all, around, part } from "../site/find.js";
import { element } from "../site/element.js";
import { letDrag } from "./drag.js";
import { finish, listen, redraw } from "./form.js";
import { keepPlace } from "./keep-place.js";
import { Look } from "./look.js";
import { Offers } from "./offers.js";
import { show } from "./problems.js";
import { Saving } from "./saving.js";
import { about, drawn, read } from "./send.js";

const SETTLED = 500, ASKS_EVERY = 20_000;

/** @typedef {import("./send.js").Asked} Asked */

/** Where to go on after a change that drew the form anew. @type {(asked: Asked) => string} */
const whereNext = (asked) => {
  const loc = Array.isArray(asked.loc) ? asked.loc : [];
  const base = typeof asked.activity === "number" ? `activity-${asked.activity}` : "front";
  const id = (/** @type {(string | number)[]} */ steps) => [base, ...steps].join(".");
  if (asked.do === "add" && typeof asked.text === "string") return `add-${id(loc)}`;
  if (asked.do === "add") return typeof asked.key === "string" ? id([...loc, asked.key]) : `last:${id(loc)}`;
  if (asked.do === "move") return id([...loc.slice(0, -1), Number(asked.to)]);
  if (asked.do === "remove") return typeof loc.at(-1) === "number" ? `fold-${id(loc.slice(0, -1))}` : id(loc);
  return "";
};

/** The last item of a list that has just grown. @type {(go: string, html: string) => string} */
const found = (go, html) => {
  if (!go.startsWith("last:")) return go;
  const items = all(drawn(html), ".item[id]", HTMLElement).map((one) => one.id), base = `${go.slice(5)}.`;
  return items.filter((id) => id.startsWith(base) && !id.slice(base.length).includes(".")).at(-1) ?? "";
};

class OpenPage {
  /** @param {HTMLElement} page */
  constructor(page) {
    this.form = part(document, "#form", HTMLElement);
    this.conflict = part(document, "#conflict", HTMLElement);
    this.saving = new Saving(page, {
      saved: (saved, asked) => this.saved(saved, asked),
      refused: (why, asked) => this.refused(why, asked),
      changedOutside: (refused, asked, address) => this.changedOutside(refused, asked, address),
    });
    this.source = this.saving.source;
    this.look = new Look(this.source);
    this.offers = new Offers(this.source, (address, asked) => this.saving.send(address, asked));
    this.settling = 0;
    const change = (/** @type {Asked} */ asked) => this.saving.send("/edit", asked);
    finish(this.form);
    listen(this.form, change);
    letDrag(this.form, change);
    this.form.addEventListener("click", (event) => {
      if (around(event, "[data-do=rewrite]")) this.saving.send("/rewrite", { text: part(this.form, "#whole-text", HTMLTextAreaElement).value });
    });
    part(document, "#undo", HTMLButtonElement).addEventListener("click", () => this.saving.send("/step", { by: -1 }));
    part(document, "#redo", HTMLButtonElement).addEventListener("click", () => this.saving.send("/step", { by: 1 }));
    document.addEventListener("keydown", (event) => this.key(event));
    this.letShowStates();
    this.letChooseSide();
    this.settle(0);
    this.workOutAll();
    setInterval(() => void this.ask(), ASKS_EVERY);
  }

  /** Ctrl+Z takes the last change to the page back, where no box is being typed in, which has its own. @param {KeyboardEvent} event */
  key(event) {
    const inBox = event.target instanceof Element && event.target.matches("input, textarea");
    if (!(event.ctrlKey || event.metaKey) || inBox) return;
    const by = event.key === "z" && !event.shiftKey ? -1 : event.key === "y" || event.key === "Z" ? 1 : 0;
    if (!by) return;
    event.preventDefault();
    this.saving.send("/step", { by });
  }

  /** @param {import("./send.js").Saved} saved @param {Asked} asked */
  saved(saved, asked) {
    this.conflict.hidden = true;
    part(document, "#undo", HTMLButtonElement).disabled = !saved.undo;
    part(document, "#redo", HTMLButtonElement).disabled = !saved.redo;
    if (saved.form !== undefined) {
      const { dataset } = part(document, "#content", HTMLElement);
      dataset.mark = saved.mark;
      redraw(this.form, saved.form, found(whereNext(asked), saved.form));
      this.workOutAll();
    } else if (typeof asked.activity === "number") {
      void this.workOut(asked.activity);
    }
    saved.hanging?.forEach(({ box, html }) => this.showHanging(box, html));
    if (saved.title) part(document, "#page-title", HTMLElement).textContent = saved.title;
    this.settle(SETTLED);
  }

  /** What still holds the number that was in a box, beside it; typed again, it is told anew. @param {string} box @param {string} html */
  showHanging(box, html) {
    const at = document.getElementById(`problems-${box}`), told = document.getElementById(`hanging-${box}`) ?? element("div", "hanging");
    told.id = `hanging-${box}`;
    told.setAttribute("role", "status");
    at?.after(told);
    told.replaceChildren(drawn(html));
  }

  /** @param {string} why @param {Asked} asked */
  refused(why, asked) {
    const loc = Array.isArray(asked.loc) ? asked.loc : [];
    const base = typeof asked.activity === "number" ? `activity-${asked.activity}` : loc.length ? "front" : typeof asked.section === "number" ? `section-${asked.section}` : "";
    const list = document.getElementById(`problems-${[base, ...loc].join(".")}`) ?? document.getElementById("all-wrong");
    list?.append(element("li", "not-saved", `Not saved: ${why}`));
    this.saving.told.textContent = `Not saved: ${why}`;
  }

  /** @param {import("./send.js").Refused} refused @param {Asked} asked @param {string} address */
  changedOutside(refused, asked, address) {
    part(document, "#conflict-why", HTMLElement).textContent = refused.refused;
    const lines = [...(refused.difference ?? []), ...(typeof asked.text === "string" ? [`+ ${asked.text}`] : [])];
    part(document, "#conflict-difference", HTMLElement).replaceChildren(...lines.map((line) => element("li", line.startsWith("−") ? "gone" : "come", line)));
    this.conflict.hidden = false;
    this.conflict.focus();
    part(document, "#conflict-theirs", HTMLButtonElement).onclick = () => location.reload();
    part(document, "#conflict-mine", HTMLButtonElement).onclick = () => {
      this.saving.mark = refused.mark ?? this.saving.mark;
      this.saving.send(address, asked);
    };
  }

  /** Asks for what is wrong once nothing more is being changed, and shows the page as it is then. @param {number} after */
  settle(after) {
    clearTimeout(this.settling);
    this.settling = window.setTimeout(() => void this.check(), after);
  }

  async check() {
    const told = JSON.parse(await read(about("/problems", this.source)));
    if (this.saving.waiting.length || told.mark !== this.saving.mark) return; // more has been changed since
    show(told.problems, told.elsewhere);
    this.look.renew();
    await this.offers.renew();
  }

  /** @param {number} number */
  async workOut(number) {
    const at = document.getElementById(`worked-${number}`);
    if (!at) return;
    const html = await read(about("/work-out", this.source, { activity: String(number) })), placeKept = keepPlace(at);
    at.replaceChildren(drawn(html));
    placeKept()?.focus();
  }

  workOutAll() {
    all(this.form, "[data-activity]", HTMLElement).forEach((one) => void this.workOut(Number(one.dataset.activity)));
  }

  /** Keeps the desk going, and tells where the file has changed meanwhile. */
  async ask() {
    const { mark } = JSON.parse(await read(about("/state", this.source)));
    if (mark === this.saving.mark || this.saving.busy || !this.conflict.hidden) return;
    this.changedOutside({ refused: "This file has been changed by another program. Nothing of yours is lost: all you typed so far was saved before.", mark }, {}, "/edit");
    part(document, "#conflict-mine", HTMLButtonElement).hidden = true;
  }

  letShowStates() {
    const more = part(document, "#show-states", HTMLButtonElement), states = part(document, "#states", HTMLElement);
    more.addEventListener("click", async () => {
      const open = !states.hidden;
      more.setAttribute("aria-expanded", String(!open));
      states.hidden = open;
      if (!open) states.replaceChildren(drawn(await read(about("/states", this.source))));
    });
    states.addEventListener("click", (event) => {
      const chosen = around(event, "[data-state]");
      if (!chosen) return;
      this.saving.send("/restore", { name: chosen.dataset.state });
      more.click();
      more.focus();
    });
  }

  /** On a narrow screen the form and the look take turns. */
  letChooseSide() {
    const sides = part(document, "#sides", HTMLElement), form = part(document, "#show-form", HTMLButtonElement), look = part(document, "#show-look", HTMLButtonElement);
    const choose = (/** @type {boolean} */ looks) => {
      sides.classList.toggle("looks-now", looks);
      form.setAttribute("aria-pressed", String(!looks));
      look.setAttribute("aria-pressed", String(looks));
    };
    form.addEventListener("click", () => choose(false));
    look.addEventListener("click", () => choose(true));
  }
}

/** @type {(page: HTMLElement) => void} */
export const openPage = (page) => { new OpenPage(page); };
