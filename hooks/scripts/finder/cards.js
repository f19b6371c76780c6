/* Draws what was found as cards; summaries and words in their place are fetched for the cards in sight only. */
/** @import { Data, Idea } from "./rows.js" */
/** @import { Hit } from "./text.js" */
/** @import { Pieces } from "./words.js" */
import { at } from "../site/address.js";
import { element, link } from "../site/element.js";
import { load } from "../site/load.js";
import { planButton } from "../site/plan-button.js";
import { nameOf } from "../site/plan-list.js";
import { cutAt } from "./words.js";

const SHELF = 25; // as in hooks/storymaths/publish/finder_words.py
const SVG = "http://www.w3.org/2000/svg";
const ROOF = "M6 24 24 8 42 24V42H29V30H19V42H6Z";
/** @type {WeakMap<Element, () => void>} */
const late = new WeakMap();

const inSight = new IntersectionObserver((entries) => {
  for (const { isIntersecting, target } of entries) {
    if (!isIntersecting) continue;
    inSight.unobserve(target);
    late.get(target)?.();
  }
}, { rootMargin: "200px" });

/** @type {(idea: Idea) => Element | ""} */
const sign = (idea) => {
  if (idea.card === "book-card") {
    const cover = element("img", "cover");
    return Object.assign(cover, { src: at(idea.cover), alt: "", width: 180, height: 240, loading: "lazy" });
  }
  if (idea.card === "step-card") {
    const step = element("span", "step-number", String(idea.step));
    step.setAttribute("aria-hidden", "true");
    return step;
  }
  if (idea.card === "text-card") return "";
  const roof = document.createElementNS(SVG, "svg"), path = document.createElementNS(SVG, "path");
  roof.setAttribute("class", "roof");
  roof.setAttribute("viewBox", "0 0 48 48");
  roof.setAttribute("aria-hidden", "true");
  path.setAttribute("d", ROOF);
  roof.append(path);
  return roof;
};

/** @type {(pieces: Pieces) => (string | HTMLElement)[]} */
const withMarks = (pieces) => pieces.map(([text, isMark]) => (isMark ? element("mark", "", text) : text));

/** @type {(idea: Idea, words: string[]) => HTMLElement} */
const heading = (idea, words) => {
  const line = element("h2"), to = link(at(idea.address), "");
  if (idea.card === "step-card") to.append(element("span", "only-heard", `Session ${idea.step}: `));
  to.append(...(words.length ? withMarks(cutAt(idea.title, words).pieces) : [idea.title]));
  line.append(to);
  return line;
};

/** @type {(data: Data, idea: Idea) => HTMLElement} */
const facts = (data, idea) => {
  const line = element("p", "facts"), year = element("span", `year year-${idea.year}`);
  const mark = document.querySelector(`.finder-index .year-${idea.year} .mark`);
  if (mark) year.append(mark.cloneNode(true));
  year.append(data.columns.years[idea.year] ?? "");
  if (idea.year >= 0) line.append(year);
  if (idea.minutes) line.append(element("span", "", `${idea.minutes} minutes`));
  return line;
};

/** A line, and what fills it. @type {(idea: Idea) => [HTMLElement, () => void]} */
const summaryLine = (idea) => {
  const line = element("p", "summary");
  return [line, async () => {
    const shelf = await load(`cards/${Math.floor(idea.row / SHELF)}`).catch(() => []);
    line.textContent = /** @type {string[]} */ (shelf)[idea.row % SHELF] ?? "";
  }];
};

/**
 * Why it is here: told at once as far as the columns tell, the words of the text when they have come.
 * @type {(reasons: string[], hit?: Hit) => [HTMLElement, () => void]}
 */
const whyLine = (reasons, hit) => {
  const line = element("p", "why", reasons.join(" · "));
  if (!hit) return [line, () => {}];
  line.append(`${reasons.length ? " · " : ""}words in the ${hit.story ? "story" : "text"}`);
  return [line, async () => {
    const pieces = await hit.excerpt().catch(() => []);
    if (pieces.length) line.append(": … ", ...withMarks(pieces), " …");
  }];
};

/**
 * `words` are marked in the title; `hit` is where the text has them, when the title has not.
 * @type {(data: Data, row: number, reasons: string[], words: string[], hit?: Hit) => HTMLElement}
 */
export const drawCard = (data, row, reasons, words, hit) => {
  const idea = data.ideas[row], item = element("li", `card ${idea.card}`);
  const box = element("div"), [summary, sum] = summaryLine(idea), [why, quote] = whyLine(reasons, hit);
  box.append(heading(idea, words));
  if (idea.of) {
    const of = element("p", "of", `${idea.of} `);
    of.append(element("em", "", data.ideas[idea.book].title));
    box.append(of);
  }
  box.append(summary);
  if (why.textContent) box.append(why);
  const foot = element("div", "card-foot");
  foot.append(facts(data, idea));
  if (idea.planned) foot.append(planButton(nameOf(idea.address), idea.title));
  box.append(foot);
  item.append(sign(idea), box);
  late.set(item, () => { sum(); quote(); });
  inSight.observe(item);
  return item;
};
