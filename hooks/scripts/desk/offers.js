/* Proposals for the page and ideas for its book, each to take or to leave. */
import { around, part } from "../site/find.js";
import { keepPlace } from "./keep-place.js";
import { about, drawn, read } from "./send.js";

/** @typedef {import("./send.js").Asked} Asked */

export class Offers {
  /** @param {string} source @param {(address: string, asked: Asked) => void} send */
  constructor(source, send) {
    this.source = source;
    this.send = send;
    this.at = part(document, "#offers", HTMLElement);
    this.more = part(document, "#show-offers", HTMLButtonElement);
    /** What its author has left, while the page is open. @type {Set<string>} */
    this.left = new Set();
    /** What was asked for before somebody pressed a button is not shown any more. */
    this.turn = 0;
    this.more.addEventListener("click", () => void this.show(Boolean(this.at.hidden)));
    this.at.addEventListener("click", (event) => void this.press(event));
  }

  /** @param {boolean} open */
  async show(open) {
    this.more.setAttribute("aria-expanded", String(open));
    this.at.hidden = !open;
    if (open) await this.renew();
  }

  /** Asks again, once the page is another; ideas that were found stay. */
  async renew() {
    if (this.at.hidden) return;
    const turn = ++this.turn, html = await read(about("/offers", this.source));
    if (turn !== this.turn) return;
    const found = [...(document.getElementById("ideas")?.childNodes ?? [])];
    const placeKept = keepPlace(this.at);
    this.at.replaceChildren(drawn(html));
    part(this.at, "#ideas", HTMLElement).replaceChildren(...found);
    this.at.querySelectorAll("[data-leave]").forEach((one) => {
      if (one instanceof HTMLElement && this.left.has(one.dataset.leave ?? "")) one.closest("li")?.remove();
    });
    placeKept()?.focus();
  }

  /** @param {Event} event */
  async press(event) {
    const chosen = around(event, "button"), idea = around(event, "[data-idea]");
    if (!chosen) return;
    this.turn += 1;
    if (chosen.id === "find-ideas") return this.findIdeas();
    if (chosen.dataset.take) this.send("/take", { key: chosen.dataset.take });
    if (chosen.dataset.leave) this.left.add(chosen.dataset.leave);
    if (idea && "putIdea" in chosen.dataset) {
      const text = part(idea, "[data-block]", HTMLTextAreaElement).value, section = Number(part(idea, "select", HTMLSelectElement).value);
      this.send("/edit", { do: "put-activity", section, text });
    }
    const next = chosen.closest("li")?.nextElementSibling?.querySelector("button") ?? this.more;
    chosen.closest("li")?.remove();
    if (next instanceof HTMLElement) next.focus();
  }

  async findIdeas() {
    const ideas = part(this.at, "#ideas", HTMLElement), year = part(this.at, "#ideas-year", HTMLSelectElement).value;
    ideas.textContent = "Looking for ideas …";
    ideas.replaceChildren(drawn(await read(about("/ideas", this.source, { year }))));
  }
}
