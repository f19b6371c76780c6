/* Draws the facets: boxes to tick, with how many ideas each would leave; and the chosen ones as chips to take away. */
(() => {
  const { finder, element } = window.storymaths;
  const MANY = 24; // a longer list is shown in part
  const FEW = 40; // a shorter tree is shown whole

  class Facet {
    constructor(data, facet, onChoose) {
      [this.name, this.words] = finder.FACETS[facet];
      this.data = data;
      this.onChoose = onChoose;
      this.used = data.values.filter((value) => value.facet === facet && finder.isUsed(data, value.number));
      this.boxes = new Map();
      this.details = element("details", `facet facet-${this.name}`);
      this.summary = element("summary", "", this.words);
      this.told = element("span", "facet-chosen");
      this.summary.append(" ", this.told);
      this.details.append(this.summary);
      this.details.addEventListener("toggle", () => this.details.open && this.fill());
    }

    /* Boxes are made when the facet is first opened: a page of closed facets stays light. */
    fill() {
      if (!this.group) {
        this.group = element("fieldset");
        this.group.append(element("legend", "only-heard", this.words));
        if (this.name === "concept") this.fillTree();
        else if (this.used.length > MANY) this.fillMany();
        else this.group.append(...this.used.map((value) => this.box(value)));
        this.details.append(this.group);
      }
      if (this.state) this.show(this.state, this.counted);
    }

    fillTree() {
      for (const whole of this.used.filter((value) => value.whole)) {
        const inside = this.used.filter((value) => value.strand === whole.strand);
        const details = element("details", "strand-values");
        const summary = element("summary", "", whole.words);
        const mark = document.querySelector(`.finder-index .strand-${whole.key.slice("strand-".length)} .mark`);
        if (mark) summary.prepend(mark.cloneNode(true), " ");
        details.open = this.used.length <= FEW || inside.some((value) => this.state?.chosen[value.number]);
        const wordsOf = (value) => (value.whole ? `all of ${value.words}` : value.words);
        details.append(summary, ...inside.map((value) => this.box(value, wordsOf(value))));
        this.group.append(details);
      }
    }

    /* Long lists show those with most left, or those whose name has some letters. */
    fillMany() {
      const label = element("label", "facet-narrow", `Part of its name`);
      const input = element("input");
      input.type = "search";
      input.autocomplete = "off";
      label.append(input);
      this.list = element("div", "facet-many");
      this.rest = element("p", "note");
      input.addEventListener("input", () => {
        this.part = input.value.trim().toLowerCase();
        this.show(this.state, this.counted);
      });
      this.group.append(label, this.list, this.rest);
    }

    showMany() {
      const part = this.part ?? "", { left, more } = this.counted, { chosen } = this.state;
      const fitting = this.used.filter(({ number, words }) => chosen[number] || words.toLowerCase().includes(part));
      const worth = ({ number }) => (chosen[number] ? 1e6 : 0) + left[number] + more[number];
      fitting.sort((a, b) => worth(b) - worth(a) || a.number - b.number);
      const shown = fitting.slice(0, MANY);
      const focused = document.activeElement;
      this.list.replaceChildren(...shown.map((value) => this.boxes.get(value.number)?.label ?? this.box(value)));
      if (this.list.contains(focused)) focused.focus();
      this.rest.textContent = fitting.length > MANY ? `and ${fitting.length - MANY} more: type part of a name` : "";
    }

    box(value, words = value.words) {
      const label = element("label", value.bend === undefined ? "" : "bend-value");
      if (value.depth > 0) label.classList.add("deep");
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

    show(state, counted) {
      Object.assign(this, { state, counted });
      const chosen = this.used.filter((value) => state.chosen[value.number]).length;
      this.told.textContent = chosen ? `${chosen} chosen` : "";
      if (!this.details.open || !this.group) return;
      if (this.list) this.showMany();
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

  finder.isUsed = (data, value) => {
    data.used ??= Uint8Array.from(data.values, () => 0);
    if (!data.usedRead) { for (const number of data.has) data.used[number] = 1; data.usedRead = true; }
    return data.used[value] === 1;
  };

  finder.drawFacets = (data, holder, onChoose) => {
    const all = finder.FACETS.map((_, facet) => new Facet(data, facet, onChoose));
    const facets = all.filter(({ used }) => used.length > 1);
    holder.replaceChildren(...facets.map(({ details }) => details));
    return facets;
  };

  finder.drawChips = (data, list, state, { takeAway, clear }) => {
    const chip = (words, heard, act) => {
      const item = element("li"), button = element("button", "chip");
      button.type = "button";
      button.append(element("span", "only-heard", heard), element("span", "", words));
      const cross = element("span", "cross", "×");
      cross.setAttribute("aria-hidden", "true");
      button.append(cross);
      button.addEventListener("click", act);
      item.append(button);
      return item;
    };
    const chips = state.order.map((value, place) => chip(data.values[value].words, "Take away: ", () => {
      takeAway(value);
      const beside = list.querySelectorAll("button")[Math.min(place, state.order.length - 1)];
      (beside ?? document.querySelector("#find-q")).focus();
    }));
    if (chips.length > 1) {
      const all = element("li"), button = element("button", "quiet", "Start again");
      button.type = "button";
      button.addEventListener("click", clear);
      all.append(button);
      chips.push(all);
    }
    list.replaceChildren(...chips);
    list.hidden = chips.length === 0;
  };
})();
