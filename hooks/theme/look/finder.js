/* The finder: facets and titles from the compact catalogue, words of the text from the text index. */

const place = document.querySelector("[data-finder]");
const FACETS = ["kind", "year", "concept", "theme", "minutes", "book"];
const NAMES = { kind: "Kind", year: "Year", concept: "Concept", theme: "Theme", minutes: "Minutes", book: "Book" };
const KIND_NAMES = { session: "Sessions", home: "Home activities", book: "Books" };
const SPANS = [["15", "up to 15"], ["45", "16 to 45"], ["60", "46 to 60"], ["90", "more than 60"]];
const FEW = 60;

const span = (minutes) => (minutes <= 15 ? "15" : minutes <= 45 ? "45" : minutes <= 60 ? "60" : "90");

/* One row of the catalogue as an object whose facets are lists of values. */
const readRow = (catalogue) => ([kind, address, title, summary, book, year, also, minutes, concepts, themes]) => ({
  address, title, summary, minutes, year, also,
  bookTitle: catalogue.books[book][1],
  words: `${title} ${summary} ${catalogue.books[book][1]}`.toLowerCase(),
  facets: {
    kind: [catalogue.kinds[kind]],
    year: [String(year), ...also.map((n) => `b${n}`)],
    concept: concepts.map((n) => catalogue.concepts[n][0]),
    theme: themes.map((n) => catalogue.themes[n][0]),
    minutes: minutes ? [span(minutes)] : [],
    book: [catalogue.books[book][0]],
  },
  kind: catalogue.kinds[kind],
});

/* Every value a facet can have, with its name, in a sensible order. */
const valuesOf = (catalogue) => ({
  kind: catalogue.kinds.map((kind) => [kind, KIND_NAMES[kind]]),
  year: catalogue.years.flatMap(([n, name]) => [[String(n), name], [`b${n}`, `bends to ${name}`]]),
  concept: catalogue.concepts.map(([id, name]) => [id, name]),
  theme: catalogue.themes.map(([id, name]) => [id, name]),
  minutes: SPANS,
  book: catalogue.books.map(([id, title]) => [id, title]),
});

const readAddress = () => {
  const query = new URLSearchParams(location.search);
  return {
    q: query.get("q") ?? "",
    chosen: Object.fromEntries(FACETS.map((facet) => [facet, new Set(query.getAll(facet).filter(Boolean))])),
  };
};

const writeAddress = (state, replace) => {
  const query = new URLSearchParams();
  if (state.q) query.set("q", state.q);
  for (const facet of FACETS) for (const value of state.chosen[facet]) query.append(facet, value);
  const text = query.toString();
  history[replace ? "replaceState" : "pushState"](null, "", text ? `?${text}` : location.pathname);
};

const fits = (row, chosen, except) =>
  FACETS.every((facet) => facet === except || chosen[facet].size === 0 || row.facets[facet].some((value) => chosen[facet].has(value)));

/* Pages whose text has the words, best first, with the words in their place. Needs http; without it titles still search. */
const textSearch = (() => {
  let index = null;
  return async (q) => {
    if (location.protocol === "file:") return new Map();
    try {
      index ??= await import(new URL(place.dataset.search, location.href));
      const found = await index.search(q);
      const pages = await Promise.all((found?.results ?? []).slice(0, FEW).map((result) => result.data()));
      const root = new URL(`${place.dataset.root}/`, location.href).pathname;
      return new Map(pages.map((page, rank) => {
        const path = new URL(page.url, location.href).pathname;
        return [decodeURI(path.startsWith(root) ? path.slice(root.length) : path.replace(/^\//, "")), { rank, excerpt: page.excerpt }];
      }));
    } catch {
      return new Map();
    }
  };
})();

const element = (name, className, text) => {
  const made = document.createElement(name);
  if (className) made.className = className;
  if (text !== undefined) made.textContent = text;
  return made;
};

/* The index marks words with <mark>; everything else in an excerpt is taken as text. */
const excerptInto = (holder, excerpt) => {
  for (const part of excerpt.split(/(<mark>.*?<\/mark>)/)) {
    const marked = part.match(/^<mark>(.*)<\/mark>$/);
    const plain = new DOMParser().parseFromString(marked ? marked[1] : part, "text/html").body.textContent;
    holder.append(marked ? element("mark", "", plain) : plain);
  }
};

class Finder {
  constructor(catalogue) {
    this.rows = catalogue.rows.map(readRow(catalogue));
    this.values = valuesOf(catalogue);
    this.form = place.querySelector("form");
    this.words = place.querySelector("#find-q");
    this.status = place.querySelector(".finder-status");
    this.chips = place.querySelector(".chips");
    this.results = place.querySelector(".results");
    this.found = new Map();
    this.boxes = new Map();
    this.drawFacets();
    this.listen();
  }

  drawFacets() {
    const holder = this.form.querySelector(".facets");
    for (const facet of FACETS) {
      const used = this.values[facet].filter(([value]) => this.rows.some((row) => row.facets[facet].includes(value)));
      if (!used.length) continue;
      const details = element("details", "facet");
      details.append(element("summary", "", NAMES[facet]));
      const group = element("fieldset");
      group.append(element("legend", "only-heard", NAMES[facet]));
      for (const [value, name] of used) {
        const label = element("label");
        const box = element("input");
        box.type = "checkbox";
        box.name = facet;
        box.value = value;
        const count = element("span", "count");
        label.append(box, element("span", "", name), count);
        group.append(label);
        this.boxes.set(`${facet}:${value}`, { box, count, label, name });
      }
      details.append(group);
      holder.append(details);
    }
  }

  listen() {
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.form.addEventListener("change", (event) => {
      if (event.target.type !== "checkbox") return;
      this.choose(event.target.name, event.target.value, event.target.checked);
    });
    let waiting = 0;
    this.words.addEventListener("input", () => {
      clearTimeout(waiting);
      waiting = setTimeout(() => {
        this.state.q = this.words.value.trim();
        writeAddress(this.state, true);
        this.search();
      }, 150);
    });
    addEventListener("popstate", () => this.start());
  }

  choose(facet, value, on) {
    this.state.chosen[facet][on ? "add" : "delete"](value);
    writeAddress(this.state, false);
    this.draw();
  }

  start() {
    this.state = readAddress();
    this.words.value = this.state.q;
    return this.search();
  }

  async search() {
    const q = this.state.q;
    this.found = q ? await textSearch(q) : new Map();
    if (q === this.state.q) this.draw();
  }

  /* How well a row answers the words: title first, then its summary, then the text of its page. */
  worth(row) {
    const { q } = this.state;
    if (!q) return 1;
    const words = q.toLowerCase().split(/\s+/);
    if (words.every((word) => row.title.toLowerCase().includes(word))) return 3000;
    if (words.every((word) => row.words.includes(word))) return 2000;
    const inText = this.found.get(row.address);
    return inText ? 1000 - inText.rank : 0;
  }

  draw() {
    const { chosen } = this.state;
    const named = this.rows.map((row) => [row, this.worth(row)]).filter(([, worth]) => worth > 0);
    for (const [key, { box, count, label }] of this.boxes) {
      const [facet, value] = key.split(":");
      const left = named.filter(([row]) => row.facets[facet].includes(value) && fits(row, chosen, facet)).length;
      box.checked = chosen[facet].has(value);
      count.textContent = String(left);
      label.classList.toggle("none", left === 0);
    }
    const shown = named.filter(([row]) => fits(row, chosen)).sort((a, b) => b[1] - a[1]).map(([row]) => row);
    this.drawChips();
    this.results.replaceChildren(...shown.slice(0, FEW).map((row) => this.card(row)));
    const many = shown.length === 1 ? "1 idea" : `${shown.length} ideas`;
    const asked = this.state.q || FACETS.some((facet) => chosen[facet].size);
    this.status.textContent = shown.length ? (asked ? `${many} found.` : `${many} in all.`) : `Nothing has all of that. ${this.nearest(named)}`;
    if (shown.length > FEW) this.status.textContent += ` The first ${FEW} are shown.`;
  }

  /* What to let go of so that something is left. */
  nearest(named) {
    let best = null;
    for (const facet of FACETS) {
      for (const value of this.state.chosen[facet]) {
        const less = { ...this.state.chosen, [facet]: new Set([...this.state.chosen[facet]].filter((other) => other !== value)) };
        const left = named.filter(([row]) => fits(row, less)).length;
        if (left && (!best || left > best.left)) best = { left, name: this.boxes.get(`${facet}:${value}`)?.name ?? value };
      }
    }
    return best ? `Without “${best.name}” there would be ${best.left}.` : "Try other words, or fewer.";
  }

  drawChips() {
    const chips = FACETS.flatMap((facet) => [...this.state.chosen[facet]].map((value) => {
      const item = element("li");
      const name = this.boxes.get(`${facet}:${value}`)?.name ?? value;
      const button = element("button", "quiet", `${name} ×`);
      button.type = "button";
      button.setAttribute("aria-label", `Take away ${name}`);
      button.addEventListener("click", () => {
        this.choose(facet, value, false);
        (this.chips.querySelector("button") ?? this.words).focus();
      });
      item.append(button);
      return item;
    }));
    this.chips.replaceChildren(...chips);
    this.chips.hidden = chips.length === 0;
  }

  card(row) {
    const item = element("li", "card");
    const box = element("div");
    const heading = element("h2");
    const link = element("a", "", row.title);
    link.href = `${place.dataset.root}/${row.address}`;
    heading.append(link);
    box.append(heading);
    if (row.kind !== "book") box.append(element("p", "of", `${row.kind === "session" ? "from" : "at home with"} ${row.bookTitle}`));
    box.append(element("p", "", row.summary));
    const why = this.found.get(row.address);
    if (why) {
      const line = element("p", "why");
      excerptInto(line, why.excerpt);
      box.append(line);
    }
    const facts = element("p", "facts");
    const year = this.values.year.find(([value]) => value === String(row.year))[1];
    facts.append(element("span", `year year-${row.year}`, year));
    if (row.minutes) facts.append(element("span", "", `${row.minutes} minutes`));
    box.append(facts);
    item.append(box);
    return item;
  }
}

const catalogueOnPage = document.querySelector("script[data-catalogue]");
const load = async () => (catalogueOnPage ? JSON.parse(catalogueOnPage.textContent) : (await fetch(place.dataset.catalogue)).json());

load().then(async (catalogue) => {
  const finder = new Finder(catalogue);
  await finder.start();
  finder.form.hidden = false;
  finder.results.hidden = false;
  place.querySelector(".finder-index").hidden = true;
}).catch(() => {
  place.querySelector(".finder-status").textContent = "The finder could not start; the lists below answer the same questions.";
});
