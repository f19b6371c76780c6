/* The form on the page of a series: lays its sessions on the days a school gives, on this device and nowhere else. */
(() => {
  const { weeks, load, root, element } = window.storymaths;
  const place = document.querySelector("[data-weeks]");
  if (!place) return;
  const form = place.querySelector("form"), faults = place.querySelector(".weeks-faults");
  const [notes, frame, acts] = [".weeks-notes", ".table-frame", ".weeks-acts"].map((name) => place.querySelector(name));
  const clean = (words) => words.replace(/[ \t\r\n]+/g, " ").replace(/^ | $/g, "");
  let made = null, asking = false;

  const asked = (data) => {
    const given = new FormData(form), own = weeks.readHolidays(given.get("holidays"));
    const bank = given.has("bank") ? data.bank : { days: [], known: null };
    const kept = bank.days.map(([iso, name]) => {
      const { day } = weeks.dayOf(iso);
      return { first: day, last: day, name };
    });
    return {
      start: weeks.dayOf(given.get("start")),
      minutes: Number(given.get("minutes")),
      days: given.getAll("days").map(Number),
      holidays: [...own.holidays, ...kept],
      known: bank.known,
      waits: given.has("waits"),
      ofClass: clean(given.get("class")),
      unread: own.unread,
    };
  };

  /* What stands in the way of a plan, in words. */
  const wrong = (lessons, { start, minutes, days, unread }) => {
    const all = lessons.flatMap(({ title, steps }) => steps.map(([name, each]) => ({ title, name, each })));
    const long = all.filter(({ each }) => each > minutes).sort((one, other) => other.each - one.each);
    const others = weeks.counted(long.length - 1, "other step"), are = long.length === 2 ? "is" : "are";
    const tooLong = ({ title, name, each }) => `The step “${name}” of “${title}” takes ${weeks.counted(each, "minute")}, `
      + `longer than a day of this plan${long.length > 1 ? `; so ${are} ${others}` : ""}. `
      + `With ${each} minutes a day or more it can be done.`;
    return [
      ...(start.why ? [`First day: ${start.why}`] : []),
      ...(days.length ? [] : ["Tick at least one day of the week."]),
      ...(Number.isInteger(minutes) && minutes >= 1 && minutes <= 240 ? long.slice(0, 1).map(tooLong) : ["Minutes a day: give a whole number from 1 to 240."]),
      ...unread.map(({ line, why }) => `Your school’s days, line ${line}: ${why}`),
    ];
  };

  const list = (lines) => {
    const all = element("ul");
    all.append(...lines.map((line) => element("li", "", line)));
    return all;
  };

  const row = ({ when, part, why }) => {
    const line = element("tr", part ? "" : "no-lesson"), head = element("th", "", when), cell = element("td");
    head.scope = "row";
    line.append(head, cell);
    if (!part) {
      cell.colSpan = 2;
      cell.textContent = why;
      return line;
    }
    const { bookTitle, number, reads, address } = part.lesson, link = element("a", "", weeks.nameOf(part));
    link.href = new URL(address, root);
    cell.append(link, element("span", "note", `${bookTitle}, session ${number}: ${reads}`));
    if (part.of > 1) cell.append(element("span", "note", weeks.stepsInWords(part)));
    line.append(element("td", "", String(part.minutes)));
    return line;
  };

  const table = (plan) => {
    const whole = element("table", "weeks-table"), top = element("thead"), heads = element("tr");
    heads.append(...["Day", "Session", "Minutes"].map((name) => Object.assign(element("th", "", name), { scope: "col" })));
    top.append(heads);
    whole.append(top);
    let week = 0;
    for (const each of weeks.rows(plan)) {
      if (each.week !== week) {
        week = each.week;
        const head = Object.assign(element("th", "", `Week ${week}`), { scope: "rowgroup", colSpan: 3 });
        const line = element("tr", "week");
        line.append(head);
        whole.append(element("tbody"));
        whole.lastChild.append(line);
      }
      whole.lastChild.append(row(each));
    }
    return whole;
  };

  const save = (words, type, ending) => {
    const link = element("a");
    link.href = URL.createObjectURL(new Blob([words], { type }));
    link.download = [made.data.id, weeks.slug(made.plan.asked.ofClass)].filter(Boolean).join("-") + ending;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  };

  const button = (words, act, className = "quiet") => {
    const one = Object.assign(element("button", className, words), { type: "button" });
    one.addEventListener("click", act);
    return one;
  };

  /* Only the plan is printed, not the whole page of the series. */
  const printPlan = () => {
    document.documentElement.classList.add("only-weeks");
    addEventListener("afterprint", () => document.documentElement.classList.remove("only-weeks"), { once: true });
    print();
  };

  acts.append(
    button("Print this plan", printPlan, ""),
    button("Save for a spreadsheet (CSV)", () => save(weeks.asCsv(made.data, made.plan), "text/csv;charset=utf-8", ".csv")),
    button("Save for a calendar (iCalendar)", () => save(weeks.asICalendar(made.data, made.plan), "text/calendar", ".ics")),
  );

  const layOut = async () => {
    let data;
    try {
      data = await load(place.dataset.weeks);
    } catch {
      faults.replaceChildren(element("p", "", "The sessions could not be fetched just now. Try again when you are connected."));
      return;
    }
    const lessons = weeks.lessonsOf(data), wanted = asked(data), said = wrong(lessons, wanted);
    faults.replaceChildren(...(said.length ? [element("p", "", "The sessions cannot be laid yet:"), list(said)] : []));
    form.elements.holidays.setAttribute("aria-invalid", String(wanted.unread.length > 0));
    asking = true;
    if (said.length) { // a plan of what was asked before would be taken for one of what is asked now
      made = null;
      acts.hidden = true;
      frame.replaceChildren();
      notes.replaceChildren();
      return;
    }
    const plan = weeks.plan(lessons, { ...wanted, start: wanted.start.day });
    made = { data, plan };
    notes.replaceChildren(...weeks.sentences(plan).map((line) => element("li", "", line)));
    if (wanted.ofClass) notes.prepend(element("li", "", `For ${wanted.ofClass}.`));
    frame.replaceChildren(table(plan));
    acts.hidden = false;
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    layOut();
  });
  form.addEventListener("change", () => asking && layOut());
  form.hidden = false;
})();
