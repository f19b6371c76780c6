/* What to get ready for a plan: a table for the class, whose size can be changed, and a line for each home. */
(() => {
  const { element, addUp } = window.storymaths;
  const MOST = 60;
  const ENOUGH = "Enough if shared: when the sessions are on different days, things that come back are counted once; "
    + "what is used up is counted each time.";

  const cell = (name, text, scope) => {
    const made = element(name, "", text);
    if (scope) made.scope = scope;
    return made;
  };

  /* One row a thing: what each session needs, all added up, and what is enough when they are not taught at once. */
  const table = (data, sessions, children) => {
    const made = element("table", "plan-materials");
    const [top, head, body] = ["thead", "tr", "tbody"].map((name) => element(name));
    const columns = sessions.map(([number]) => {
      const column = cell("th", "", "col");
      column.append(element("span", "only-heard", "Number "), String(number));
      return column;
    });
    head.append(cell("th", "What", "col"), ...columns);
    head.append(cell("th", "Added up", "col"), cell("th", "Enough if shared", "col"));
    top.append(head);
    for (const { name, each, all, enough } of addUp(data.materials, sessions.map(([, idea]) => idea), children)) {
      const row = element("tr");
      row.append(cell("th", name, "row"));
      row.append(...[...each, all, enough].map((count) => cell("td", count ? String(count) : "–")));
      body.append(row);
    }
    made.append(top, body);
    return made;
  };

  const framed = (made, heading) => {
    const frame = element("div", "table-frame");
    heading.id = "get-ready";
    frame.tabIndex = 0;
    frame.setAttribute("role", "region");
    frame.setAttribute("aria-labelledby", heading.id);
    frame.append(made);
    return frame;
  };

  const forClass = (data, sessions, { children, usual, onSize }) => {
    const part = element("section", "plan-class"), heading = element("h2", "", "Get ready for ");
    const told = element("span", "", String(children)), line = element("p", "class-size");
    const label = element("label", "", "Children in the class"), size = element("input");
    const frame = framed(table(data, sessions, children), heading);
    heading.append(told, " children");
    label.htmlFor = size.id = "class-size";
    Object.assign(size, { type: "number", min: "1", max: String(MOST), value: String(children) });
    Object.assign(size, { inputMode: "numeric", autocomplete: "off" });
    const taken = () => Math.min(MOST, Math.max(1, Number.parseInt(size.value, 10) || usual));
    size.addEventListener("input", () => {
      onSize(taken());
      told.textContent = String(taken());
      frame.replaceChildren(table(data, sessions, taken()));
    });
    size.addEventListener("change", () => { size.value = String(taken()); });
    line.append(label, " ", size);
    part.append(heading, line, frame, element("p", "note", ENOUGH));
    return part;
  };

  const forHomes = (data, homes) => {
    const part = element("section", "plan-home"), list = element("ul");
    for (const [number, idea] of homes) {
      const things = addUp(data.materials, [idea], 1).map(({ all, name }) => `${all} ${name}`).join(", ");
      list.append(element("li", "", `Number ${number}, ${idea[0]}: ${things}.`));
    }
    part.append(element("h2", "", "Each home needs"), list);
    return part;
  };

  /* The parts of the page; `numbered` is each idea with its place in the plan. A home activity has no group size. */
  window.storymaths.planMaterials = (data, numbered, size) => {
    const sessions = numbered.filter(([, idea]) => idea[4] > 0), homes = numbered.filter(([, idea]) => idea[4] === 0);
    return [sessions.length && forClass(data, sessions, size), homes.length && forHomes(data, homes)].filter(Boolean);
  };
})();
