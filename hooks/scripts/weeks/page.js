/* The form on the page of a series: lays its sessions on the days a school gives, on this device and nowhere else. */
/** @import { Unread } from "./holidays.js" */
/** @import { Lesson, SeriesData } from "./lessons.js" */
/** @import { Asked, Plan } from "./plan.js" */
/** @import { Row } from "./words.js" */
import { at } from "../site/address.js";
import { button, element, link } from "../site/element.js";
import { part } from "../site/find.js";
import { load } from "../site/load.js";
import { asICalendar, slug } from "./calendar.js";
import { dayOf } from "./dates.js";
import { readHolidays } from "./holidays.js";
import { lessonsOf } from "./lessons.js";
import { layLessons } from "./plan.js";
import { asCsv } from "./table.js";
import { counted, nameOf, rowsOf, sentences, stepsInWords } from "./words.js";

/**
 * @typedef {SeriesData & { bank: { days: [day: string, name: string][], known: [number, number] } }} PageData
 * @typedef {Omit<Asked, "start"> & { start: ReturnType<typeof dayOf>, unread: Unread[] }} Wanted
 */

/** What a school asks. @type {(data: PageData, given: FormData) => Wanted} */
const readForm = (data, given) => {
  const own = readHolidays(String(given.get("holidays")));
  const kept = given.has("bank") ? data.bank.days.flatMap(([iso, name]) => {
    const { day } = dayOf(iso);
    return day === null ? [] : [{ first: day, last: day, name }];
  }) : [];
  return {
    start: dayOf(String(given.get("start"))),
    minutes: Number(given.get("minutes")),
    days: given.getAll("days").map(Number),
    holidays: [...own.holidays, ...kept],
    known: given.has("bank") ? data.bank.known : null,
    waits: given.has("waits"),
    ofClass: String(given.get("class")).replace(/[ \t\r\n]+/g, " ").replace(/^ | $/g, ""),
    unread: own.unread,
  };
};

/** What stands in the way of a plan, in words. @type {(lessons: Lesson[], wanted: Wanted) => string[]} */
const wrong = (lessons, { start, minutes, days, unread }) => {
  const every = lessons.flatMap(({ title, steps }) => steps.map(([name, each]) => ({ title, name, each })));
  const long = every.filter(({ each }) => each > minutes).sort((one, other) => other.each - one.each);
  const others = counted(long.length - 1, "other step"), are = long.length === 2 ? "is" : "are";
  /** @type {(step: { title: string, name: string, each: number }) => string} */
  const tooLong = ({ title, name, each }) => `The step “${name}” of “${title}” takes ${counted(each, "minute")}, `
    + `longer than a day of this plan${long.length > 1 ? `; so ${are} ${others}` : ""}. `
    + `With ${each} minutes a day or more it can be done.`;
  const whole = Number.isInteger(minutes) && minutes >= 1 && minutes <= 240;
  return [
    ...(start.why ? [`First day: ${start.why}`] : []),
    ...(days.length ? [] : ["Tick at least one day of the week."]),
    ...(whole ? long.slice(0, 1).map(tooLong) : ["Minutes a day: give a whole number from 1 to 240."]),
    ...unread.map(({ line, why }) => `Your school’s days, line ${line}: ${why}`),
  ];
};

/** @type {(row: Row) => HTMLElement} */
const drawRow = ({ when, part: taught, why }) => {
  const line = element("tr", taught ? "" : "no-lesson"), cell = element("td");
  line.append(Object.assign(element("th", "", when), { scope: "row" }), cell);
  if (!taught) {
    cell.colSpan = 2;
    cell.textContent = why;
    return line;
  }
  const { bookTitle, number, reads, address } = taught.lesson;
  cell.append(link(at(address), nameOf(taught)), element("span", "note", `${bookTitle}, session ${number}: ${reads}`));
  if (taught.of > 1) cell.append(element("span", "note", stepsInWords(taught)));
  line.append(element("td", "", String(taught.minutes)));
  return line;
};

/** @type {(plan: Plan) => HTMLElement} */
const table = (plan) => {
  const whole = element("table", "weeks-table"), top = element("thead"), heads = element("tr");
  heads.append(...["Day", "Session", "Minutes"].map((name) => Object.assign(element("th", "", name), { scope: "col" })));
  top.append(heads);
  whole.append(top);
  let week = 0, body = element("tbody");
  for (const each of rowsOf(plan)) {
    if (each.week !== week) {
      week = each.week;
      const line = element("tr", "week");
      line.append(Object.assign(element("th", "", `Week ${week}`), { scope: "rowgroup", colSpan: 3 }));
      body = element("tbody");
      body.append(line);
      whole.append(body);
    }
    body.append(drawRow(each));
  }
  return whole;
};

/** @type {(lines: string[]) => HTMLElement[]} */
const items = (lines) => lines.map((line) => element("li", "", line));

/** @type {(words: string, type: string, name: string) => void} */
const save = (words, type, name) => {
  const file = link(URL.createObjectURL(new Blob([words], { type })), "");
  file.download = name;
  file.click();
  setTimeout(() => URL.revokeObjectURL(file.href), 1000);
};

/** Only the plan is printed, not the whole page of the series. */
const printPlan = () => {
  document.documentElement.classList.add("only-weeks");
  addEventListener("afterprint", () => document.documentElement.classList.remove("only-weeks"), { once: true });
  print();
};

/** @type {(place: HTMLElement) => void} */
const start = (place) => {
  const form = part(place, "form", HTMLFormElement), faults = part(place, ".weeks-faults", HTMLElement);
  const notes = part(place, ".weeks-notes", HTMLElement), frame = part(place, ".table-frame", HTMLElement);
  const acts = part(place, ".weeks-acts", HTMLElement), holidays = part(form, "[name=holidays]", HTMLTextAreaElement);
  /** @type {{ data: PageData, plan: Plan } | null} */
  let made = null;
  let asking = false;

  /** @type {(type: string, ending: string, write: (data: PageData, plan: Plan) => string) => void} */
  const saveAs = (type, ending, write) => {
    if (!made) return;
    const { data, plan } = made, name = [data.id, slug(plan.asked.ofClass)].filter(Boolean).join("-");
    save(write(data, plan), type, name + ending);
  };
  acts.append(
    button("Print this plan", printPlan, ""),
    button("Save for a spreadsheet (CSV)", () => saveAs("text/csv;charset=utf-8", ".csv", (_, plan) => asCsv(plan))),
    button("Save for a calendar (iCalendar)", () => saveAs("text/calendar", ".ics", asICalendar)),
  );

  /** @type {(said: string[]) => void} */
  const tell = (said) => {
    const list = element("ul");
    list.append(...items(said));
    faults.replaceChildren(...(said.length ? [element("p", "", "The sessions cannot be laid yet:"), list] : []));
  };

  const layOut = async () => {
    /** @type {PageData} */
    let data;
    try {
      data = /** @type {PageData} */ (await load(place.dataset.weeks ?? ""));
    } catch {
      faults.replaceChildren(element("p", "", "The sessions could not be fetched just now. Try again when you are connected."));
      return;
    }
    const lessons = lessonsOf(data), wanted = readForm(data, new FormData(form)), said = wrong(lessons, wanted);
    tell(said);
    holidays.setAttribute("aria-invalid", String(wanted.unread.length > 0));
    asking = true;
    if (said.length || wanted.start.day === null) { // a plan of what was asked before would be taken for one of what is asked now
      made = null;
      acts.hidden = true;
      frame.replaceChildren();
      notes.replaceChildren();
      return;
    }
    const plan = layLessons(lessons, { ...wanted, start: wanted.start.day });
    made = { data, plan };
    notes.replaceChildren(...items([...(wanted.ofClass ? [`For ${wanted.ofClass}.`] : []), ...sentences(plan)]));
    frame.replaceChildren(table(plan));
    acts.hidden = false;
  };

  faults.tabIndex = -1;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    await layOut();
    if (faults.hasChildNodes()) faults.focus(); // it may stand below what is in sight
  });
  form.addEventListener("change", () => asking && layOut());
  form.hidden = false;
};

/** @type {HTMLElement | null} */
const place = document.querySelector("[data-weeks]");
if (place) start(place);
