/* What to get ready for a plan: a table for the class, whose size can be changed, and a line for each home. */
/** @import { Idea, Material } from "./sums.js" */
import { classSize } from "../site/class-size.js";
import { element } from "../site/element.js";
import { addUp } from "./sums.js";

/**
 * @typedef {[number: number, idea: Idea]} Numbered an idea and its place in the plan
 * @typedef {{ children: number, usual: number, onSize: (children: number) => void }} Size
 */

const ENOUGH = "Enough if shared: when the sessions are on different days, things that come back are counted once; "
  + "what is used up is counted each time.";

/** @type {(words: string, scope: string) => HTMLTableCellElement} */
const head = (words, scope) => Object.assign(element("th", "", words), { scope });

/**
 * One row a thing: what each session needs, all added up, and what is enough when they are not taught at once.
 * @type {(materials: Material[], sessions: Numbered[], children: number) => HTMLTableElement}
 */
const table = (materials, sessions, children) => {
  const made = element("table", "plan-materials"), top = element("thead"), heads = element("tr"), body = element("tbody");
  const columns = sessions.map(([number]) => {
    const column = head("", "col");
    column.append(element("span", "only-heard", "Number "), String(number));
    return column;
  });
  heads.append(head("What", "col"), ...columns, head("Added up", "col"), head("Enough if shared", "col"));
  top.append(heads);
  for (const { name, each, all, enough } of addUp(materials, sessions.map(([, idea]) => idea), children)) {
    const row = element("tr");
    row.append(head(name, "row"));
    row.append(...[...each, all, enough].map((count) => element("td", "", count ? String(count) : "–")));
    body.append(row);
  }
  made.append(top, body);
  return made;
};

/** @type {(made: HTMLElement, heading: HTMLElement) => HTMLElement} */
const framed = (made, heading) => {
  const frame = element("div", "table-frame");
  heading.id = "get-ready";
  frame.tabIndex = 0;
  frame.setAttribute("role", "region");
  frame.setAttribute("aria-labelledby", heading.id);
  frame.append(made);
  return frame;
};

/** @type {(materials: Material[], sessions: Numbered[], size: Size) => HTMLElement} */
const forClass = (materials, sessions, { children, usual, onSize }) => {
  const part = element("section", "plan-class"), heading = element("h2", "", "Get ready for ");
  const told = element("span", "", String(children)), { line, size, taken } = classSize(children, usual);
  const frame = framed(table(materials, sessions, children), heading);
  heading.append(told, " children");
  size.addEventListener("input", () => {
    onSize(taken());
    told.textContent = String(taken());
    frame.replaceChildren(table(materials, sessions, taken()));
  });
  size.addEventListener("change", () => { size.value = String(taken()); });
  part.append(heading, line, frame, element("p", "note", ENOUGH));
  return part;
};

/** @type {(materials: Material[], homes: Numbered[]) => HTMLElement} */
const forHomes = (materials, homes) => {
  const part = element("section", "plan-home"), list = element("ul");
  for (const [number, idea] of homes) {
    const things = addUp(materials, [idea], 1).map(({ all, name }) => `${all} ${name}`).join(", ");
    list.append(element("li", "", `Number ${number}, ${idea[0]}: ${things}.`));
  }
  part.append(element("h2", "", "Each home needs"), list);
  return part;
};

/** The parts of the page. @type {(materials: Material[], numbered: Numbered[], size: Size) => HTMLElement[]} */
export const planMaterials = (materials, numbered, size) => {
  const sessions = numbered.filter(([, idea]) => idea[4] > 0), homes = numbered.filter(([, idea]) => idea[4] === 0);
  return [
    ...(sessions.length ? [forClass(materials, sessions, size)] : []),
    ...(homes.length ? [forHomes(materials, homes)] : []),
  ];
};
