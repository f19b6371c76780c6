/* Draws the facets: boxes to tick, with how many ideas each would leave. */
/** @import { State } from "./address.js" */
/** @import { Counted } from "./count.js" */
/** @import { Data, Value } from "./rows.js" */
import { element } from "../site/element.js";
import { FACETS } from "./rows.js";

const MANY = 24; // a longer list is shown in part
const FEW = 40; // a shorter tree is shown whole

/**
 * @typedef {{ input: HTMLInputElement, count: HTMLElement, label: HTMLElement }} Box
 * @typedef {{ list: HTMLElement, rest: HTMLElement, part: string }} Long
 */

export class Facet {
  /** @type {Map<number, Box>} */
  boxes = new Map();
  /** @type {HTMLElement | null} */
  group = null;
  /** @type {Long | null} */
  long = null;
  /** @type {{ state: State, counted: Counted } | null} */
  now = null;

  /** @param {Value[]} used @param {number} facet @param {(value: number, on: boolean) => void} onChoose */
  constructor(used, facet, onChoose) {
    const [name, words] = FACETS[facet];
    this.name = name;
    this.words = words;
    this.onChoose = onChoose;
    this.used = used;
    this.details = element("details", `facet facet-${this.name}`);
    this.summary = element("summary", "", this.words);
    this.told = element("span", "facet-chosen");
    this.summary.append(" ", this.told);
    this.details.append(this.summary);
    this.details.addEventListener("toggle", () => this.details.open && this.fill());
  }

  /** Boxes are made when the facet is first opened: a page of closed facets stays light. */
  fill() {
    if (!this.group) {
      this.group = element("fieldset");
      this.group.append(element("legend", "only-heard", this.words));
      if (this.name === "concept") this.group.append(...this.tree());
      else if (this.used.length > MANY) this.group.append(...this.many());
      else this.group.append(...this.used.map((value) => this.box(value)));
      this.details.append(this.group);
    }
    if (this.now) this.show(this.now.state, this.now.counted);
  }

  tree() {
    return this.used.filter((value) => value.whole).map((whole) => {
      const inside = this.used.filter((value) => value.strand === whole.strand);
      const details = element("details", "strand-values");
      const summary = element("summary", "", whole.words);
      const mark = document.querySelector(`.finder-index .strand-${whole.key.slice("strand-".length)} .mark`);
      if (mark) summary.prepend(mark.cloneNode(true), " ");
      details.open = this.used.length <= FEW || inside.some((value) => this.now?.state.chosen[value.number]);
      details.append(summary, ...inside.map((value) => this.box(value, value.whole ? `all of ${value.words}` : value.words)));
      return details;
    });
  }

  /** Long lists show those with most left, or those whose name has some letters. */
  many() {
    const label = element("label", "facet-narrow", "Part of its name"), input = element("input");
    input.type = "search";
    input.autocomplete = "off";
    label.append(input);
    const long = this.long = { list: element("div", "facet-many"), rest: element("p", "note"), part: "" };
    input.addEventListener("input", () => {
      long.part = input.value.trim().toLowerCase();
      if (this.now) this.show(this.now.state, this.now.counted);
    });
    return [label, long.list, long.rest];
  }

  /** @param {Long} long @param {State} state @param {Counted} counted */
  showMany({ list, rest, part }, { chosen }, { left, more }) {
    const fitting = this.used.filter(({ number, words }) => chosen[number] || words.toLowerCase().includes(part));
    /** @type {(value: Value) => number} */
    const worth = ({ number }) => (chosen[number] ? 1e6 : 0) + left[number] + more[number];
    fitting.sort((a, b) => worth(b) - worth(a) || a.number - b.number);
    const focused = document.activeElement;
    list.replaceChildren(...fitting.slice(0, MANY).map((value) => this.boxes.get(value.number)?.label ?? this.box(value)));
    if (focused instanceof HTMLElement && list.contains(focused)) focused.focus();
    rest.textContent = fitting.length > MANY ? `and ${fitting.length - MANY} more: type part of a name` : "";
  }

  /** @param {Value} value @param {string} [words] */
  box(value, words = value.words) {
    const label = element("label", value.bend === undefined ? "" : "bend-value");
    if (value.depth) label.classList.add("deep");
    const input = element("input");
    input.type = "checkbox";
    input.name = value.name;
    input.value = value.key;
    input.addEventListener("change", () => this.onChoose(value.number, input.checked));
    const count = element("span", "count");
    label.append(input, element("span", "", words), count);
    this.boxes.set(value.number, { input, count, label });
    return label;
  }

  /** @param {State} state @param {Counted} counted */
  show(state, counted) {
    this.now = { state, counted };
    const chosen = this.used.filter((value) => state.chosen[value.number]).length;
    this.told.textContent = chosen ? `${chosen} chosen` : "";
    if (!this.details.open || !this.group) return;
    if (this.long) this.showMany(this.long, state, counted);
    for (const [number, { input, count, label }] of this.boxes) {
      const ticked = state.chosen[number] === 1;
      const joins = chosen > 0 && !ticked;
      const amount = joins ? counted.more[number] : counted.left[number];
      input.checked = ticked;
      count.textContent = joins && amount ? `+${amount}` : String(amount);
      label.classList.toggle("none", amount === 0 && !ticked);
    }
  }
}

/**
 * The facets that have more than one value to choose among.
 * @type {(data: Data, holder: Element, onChoose: (value: number, on: boolean) => void) => Facet[]}
 */
export const drawFacets = (data, holder, onChoose) => {
  const has = new Set(data.has);
  const used = FACETS.map((_, facet) => data.values.filter((value) => value.facet === facet && has.has(value.number)));
  const facets = used.flatMap((values, facet) => (values.length > 1 ? [new Facet(values, facet, onChoose)] : []));
  holder.replaceChildren(...facets.map(({ details }) => details));
  return facets;
};
