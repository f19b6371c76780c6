/* The finder: asks its columns and the text, shows what fits, best first, and keeps the question in the address. */
/** @import { State } from "./address.js" */
/** @import { Answer } from "./answer.js" */
/** @import { Filter } from "./asked.js" */
/** @import { Facet } from "./facets.js" */
/** @import { AskedWords, Columns, Data } from "./rows.js" */
/** @import { Hit } from "./text.js" */
import { button, element } from "../site/element.js";
import { part } from "../site/find.js";
import { load } from "../site/load.js";
import { PAGE, readAddress, writeAddress } from "./address.js";
import { answer, guess } from "./answer.js";
import { knowWords, partsForText } from "./asked.js";
import { drawCard } from "./cards.js";
import { drawChips } from "./chips.js";
import { drawFacets } from "./facets.js";
import { drawPagesToo, nearest } from "./nearest.js";
import { inTitle, reasons } from "./rank.js";
import { read } from "./rows.js";
import { tellNone, tellWithout } from "./told.js";
import { findText, openText } from "./text.js";

const WIDE = matchMedia("(min-width: 60rem)");
const PAUSE = 40; // milliseconds without a key before the text is searched

/** @type {(number: number) => string} */
const ideasIn = (number) => (number === 1 ? "1 idea" : `${number} ideas`);

/** @type {(place: HTMLElement) => void} */
const open = (place) => {
  const form = part(place, "form", HTMLFormElement), words = part(place, "#find-q", HTMLInputElement);
  const status = part(place, ".finder-status", HTMLElement), chips = part(place, ".chips", HTMLElement);
  const results = part(place, ".results", HTMLElement), index = part(place, ".finder-index", HTMLElement);
  const main = element("div", "finder-found"), beside = element("details", "narrow"), help = element("div", "finder-help");
  const showMore = button("Show more", () => more(), "quiet show-more");
  const done = button("", () => { // on a phone what was found is below, out of sight
    beside.open = false;
    status.focus();
    main.scrollIntoView();
  }, "narrow-done");
  /** @type {Data} */
  let data;
  /** @type {Facet[]} */
  let facets = [];
  /** @type {State} */
  let state;
  /** @type {Answer} */
  let answered;
  /** @type {Map<string, Map<number, Hit>>} */
  let found = new Map();
  let known = false, looking = false, waiting = 0, saying = 0, typedFrom = "", shownFor = "", more = () => {};

  /** The words above, what narrows beside, what was found in the middle. */
  const layOut = () => {
    const holder = part(form, ".facets", HTMLElement);
    beside.append(element("summary", "", "Narrow it down"), holder, done);
    status.tabIndex = -1;
    main.append(status, chips, help, results, showMore);
    form.after(beside, main);
    const fit = () => { beside.open = WIDE.matches; };
    WIDE.addEventListener("change", fit);
    fit();
    place.classList.add("ready");
    return holder;
  };

  /** @type {(text: string, later?: boolean) => void} */
  const say = (text, later) => {
    clearTimeout(saying);
    saying = setTimeout(() => { if (status.textContent !== text) status.textContent = text; }, later ? 350 : 0);
  };

  const draw = (later = false) => {
    answered = answer(data, { ...state, q: shownFor || state.q }, found);
    const { asked, now, counted, rows, without } = answered;
    for (const facet of facets) facet.show(now, counted);
    drawChips(data, chips, state, asked.filters, { takeAway: (value) => choose(value, false), unsay, clear });
    done.textContent = rows.length ? `Show ${ideasIn(rows.length)}` : "Show the nearest";
    results.classList.toggle("looking", looking);
    results.setAttribute("aria-busy", String(looking));
    help.replaceChildren();
    if (rows.length && !(looking && without.length)) drawFound(rows, later); // the text may have the words that were let go of
    else if (looking) say("Looking in the text …", later);
    else drawNearest(later);
    const pages = drawPagesToo(data, asked);
    if (pages) help.prepend(pages);
  };

  /** @type {(rows: number[], alsoTold?: (row: number) => string[]) => HTMLElement[]} */
  const cards = (rows, alsoTold = () => []) => {
    const { asked: { parts }, now, scores } = answered;
    const words = parts.map(({ text }) => text.toLowerCase());
    const meant = parts.flatMap(({ values, nearest: near }) => [...values, ...near]);
    return rows.map((row) => {
      const told = [...alsoTold(row), ...reasons(data, data.ideas[row], now, scores, meant)];
      const hit = parts.map(({ text }) => found.get(text)?.get(row)).find(Boolean);
      return drawCard(data, row, told, words, inTitle(scores, row) ? undefined : hit);
    });
  };

  /** @type {(fitting: number[], later: boolean) => void} */
  const drawFound = (fitting, later) => {
    const most = Math.max(PAGE, state.shown);
    results.replaceChildren(...cards(fitting.slice(0, most)));
    showMore.hidden = fitting.length <= most;
    more = () => {
      const already = results.children.length;
      results.append(...cards(fitting.slice(already, already + PAGE)));
      state.shown = results.children.length;
      writeAddress(data, state, true);
      showMore.hidden = state.shown >= fitting.length;
      results.children[already].querySelector("a")?.focus();
      say(`${ideasIn(fitting.length)}, ${state.shown} shown.`);
    };
    const asked = state.q || state.order.length;
    const shown = fitting.length > most ? `, the ${asked ? "best " : "first "}${most} shown` : "";
    const guessed = shownFor ? `Shown for “${shownFor}”: ` : "";
    say(`${guessed}${tellWithout(answered)}${ideasIn(fitting.length)}${asked ? " found" : " in all"}${shown}.`, later);
  };

  /** @type {(later: boolean) => void} */
  const drawNearest = (later) => {
    const { offers, rows, reasonFor } = nearest(data, state, answered, found, { choose, ask, clear });
    help.append(...offers.map(([text, act]) => button(text, () => { act(); words.focus(); })));
    results.replaceChildren(...cards(rows, reasonFor));
    showMore.hidden = true;
    const shown = rows.length === 1 ? " The nearest is shown." : ` The ${rows.length} nearest are shown.`;
    say(`${tellNone(data, answered)}${rows.length ? shown : state.q && !answered.untaught.length ? " Try other words, or fewer." : ""}`, later);
  };

  /** @type {(value: number, on: boolean) => void} */
  const choose = (value, on) => {
    const typed = answered.asked.filters.find(({ values }) => values.includes(value));
    if (typed && !on && !state.chosen[value]) {
      unsay(typed);
      return;
    }
    state.chosen[value] = on ? 1 : 0;
    state.order = on ? [...state.order, value] : state.order.filter((other) => other !== value);
    state.shown = 0;
    writeAddress(data, state, false);
    draw();
  };

  /** Takes words that were read as a filter out of the question. @type {(filter: Filter) => void} */
  const unsay = ({ text }) => ask((shownFor || state.q).replace(text, "").split(/\s+/).filter(Boolean).join(" "));

  const clear = () => {
    state.chosen.fill(0);
    state.order = [];
    ask("");
    words.focus();
  };

  /** @type {(q: string) => void} */
  const ask = (q) => {
    words.value = q;
    state.q = q;
    state.shown = 0;
    writeAddress(data, state, false);
    lookUp();
  };

  /** Titles answer at once, the text as soon as it can; an answer to an older question is dropped. */
  const lookUp = async (pause = 0) => {
    const { q } = state;
    clearTimeout(waiting);
    [found, shownFor] = [new Map(), ""];
    if (q && !known) {
      results.classList.add("looking");
      results.setAttribute("aria-busy", "true");
      await learnWords();
      if (q !== state.q) return;
    }
    let parts = partsForText(data, q);
    looking = parts.length > 0;
    draw(pause > 0);
    if (!looking) return;
    openText();
    await new Promise((resolve) => { waiting = setTimeout(resolve, pause); });
    let hits = await findText(parts).catch(() => new Map());
    const guessed = guess(data, q, hits);
    if (guessed) {
      parts = partsForText(data, guessed);
      hits = await findText(parts).catch(() => new Map());
    }
    if (q !== state.q) return;
    [found, shownFor, looking] = [hits, guessed, false];
    draw();
  };

  /** Fetches what questions are understood by; without it they are looked up word for word. */
  const learnWords = () => load("asked").catch(() => null).then(know);

  /** @type {(asked: unknown) => void} */
  const know = (asked) => {
    if (asked && !known) knowWords(data, /** @type {AskedWords} */ (asked));
    known = true;
  };

  const start = () => {
    state = readAddress(data);
    words.value = state.q;
    typedFrom = state.q;
    return lookUp();
  };

  const listen = () => {
    form.addEventListener("submit", (event) => event.preventDefault());
    words.addEventListener("focus", () => {
      typedFrom = state.q;
      learnWords();
    });
    words.addEventListener("change", () => { typedFrom = state.q; });
    words.addEventListener("input", () => {
      const first = state.q === typedFrom; // one step back in the history undoes a whole stretch of typing
      state.q = words.value.trim();
      state.shown = 0;
      writeAddress(data, state, !first);
      lookUp(PAUSE);
    });
    addEventListener("popstate", start);
  };

  const isAsked = Boolean(new URLSearchParams(location.search).get("q"));
  Promise.all([load("finder-data"), isAsked ? load("asked").catch(() => null) : null]).then(([columns, asked]) => {
    data = read(/** @type {Columns} */ (columns));
    if (isAsked) know(asked);
    facets = drawFacets(data, layOut(), choose);
    state = readAddress(data);
    for (const { details, used } of facets) details.open = used.some(({ number }) => state.chosen[number]);
    listen();
    start();
    form.hidden = false;
    results.hidden = false;
    index.hidden = true;
  }).catch(() => {
    status.textContent = "The finder could not start; the lists below answer the same questions.";
  });
};

/** @type {HTMLElement | null} */
const place = document.querySelector("[data-finder]");
if (place) open(place);
