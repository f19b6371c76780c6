/* The page of a plan: its ideas in order, what to get ready for all of them, to print and to share as an address. */
(() => {
  const { plan, load, root, fromStick, element, planMaterials } = window.storymaths;
  const place = document.querySelector("[data-plan]");
  if (!place) return;
  const BOOKS = "books/"; // the folder all books share is left out of addresses
  const NO_ADDRESS = "From a memory stick a plan has no address to send: print it, or write down its sessions.";
  const about = place.querySelector(".plan-about");
  const status = element("p", "plan-status");
  const holder = element("div", "plan-sheets");
  status.setAttribute("role", "status");
  about.before(status, holder);

  /* In an address a plan is its ideas with commas between. */
  const shared = () => new URLSearchParams(location.search).get("plan");
  const longName = (name) => (name.split("/").length === 2 ? BOOKS + name : name);
  const namesIn = (text) => text.split(",").filter(Boolean).map(longName);
  const addressOf = (names) => {
    const short = names.map((name) => (name.startsWith(BOOKS) ? name.slice(BOOKS.length) : name));
    return new URL(`plan.html?plan=${short.map(encodeURIComponent).join(",").replaceAll("%2F", "/")}`, root).href;
  };

  const usual = Number(place.dataset.classSize);
  let data = null, children = usual, sent = shared() === null ? null : namesIn(shared());

  const button = (words, act, heard = "", className = "quiet") => {
    const made = element("button", className, words);
    made.type = "button";
    if (heard) made.append(element("span", "only-heard", ` ${heard}`));
    made.addEventListener("click", act);
    return made;
  };

  const names = () => sent ?? plan.ideas();
  const minutesIn = (ideas) => ideas.reduce((sum, [, , , minutes]) => sum + minutes, 0);
  const yearName = (year) => (year === 0 ? "Reception" : `Year ${year}`);

  const move = (name, by) => {
    const list = names(), at = list.indexOf(name);
    list.splice(at, 1);
    list.splice(at + by, 0, name);
    keep(list, () => holder.querySelector(`[data-name="${CSS.escape(name)}"] [data-by="${by}"]`));
    status.textContent = `${data.ideas[name][0]} is now number ${at + by + 1}.`;
  };

  const remove = (name) => {
    const list = names(), at = list.indexOf(name);
    keep(list.filter((other) => other !== name), () => {
      const links = holder.querySelectorAll(".plan-ideas h3 a");
      return links[Math.min(at, links.length - 1)];
    });
    const back = button("Put it back", () => {
      keep(list);
      status.textContent = "It is back.";
    });
    status.replaceChildren(`Taken out: ${data.ideas[name][0]}. `, back);
  };

  const keep = (list, focus) => {
    plan.keep(list);
    focus?.()?.focus();
  };

  const ideaItem = (name, at, all) => {
    const [title, book, year, minutes] = data.ideas[name];
    const item = element("li", "plan-idea"), heading = element("h3"), link = element("a", "", title);
    item.dataset.name = name;
    link.href = new URL(`${name}.html`, root);
    heading.append(link);
    const facts = element("p", "facts");
    facts.append(element("span", "", data.books[book]), element("span", `year year-${year}`, yearName(year)));
    facts.append(element("span", "", `${minutes} minutes`));
    item.append(heading, facts);
    if (sent) return item;
    const acts = element("p", "plan-acts");
    const up = button("Earlier", () => at > 0 && move(name, -1), title);
    const down = button("Later", () => at < all - 1 && move(name, 1), title);
    [[up, -1, at === 0], [down, 1, at === all - 1]].forEach(([turn, by, end]) => {
      turn.dataset.by = by;
      turn.setAttribute("aria-disabled", String(end));
    });
    acts.append(up, down, button("Take out", () => remove(name), title));
    item.append(acts);
    return item;
  };

  const known = () => names().filter((name) => Object.hasOwn(data.ideas, name));
  const numbered = () => known().map((name, at) => [at + 1, data.ideas[name]]);

  const share = () => {
    const part = element("section", "plan-share"), line = element("p", "plan-address");
    const label = element("label", "", "The address of this plan"), box = element("input");
    label.htmlFor = box.id = "plan-address";
    box.readOnly = true;
    box.value = addressOf(known());
    box.addEventListener("focus", () => box.select());
    line.append(label, box);
    if (fromStick) line.replaceChildren(element("span", "note", NO_ADDRESS));
    else if (navigator.clipboard) line.append(button("Copy it", async () => {
      await navigator.clipboard.writeText(box.value).catch(() => box.focus());
      status.textContent = "The address is copied. Whoever opens it sees this plan.";
    }));
    part.append(element("h2", "", "Share or print"), line);
    const acts = element("p", "actions");
    acts.append(button("Print", () => print(), "", ""));
    if (!sent) acts.append(button("Empty my plan", () => {
      const before = names();
      keep([], () => about.querySelector("a"));
      status.replaceChildren("Your plan is empty. ", button("Put it back", () => keep(before)));
    }));
    part.append(acts);
    return part;
  };

  const sentLine = () => {
    const line = element("p", "note-box plan-sent", "Somebody sent you this plan. ");
    const mine = plan.ideas().length;
    line.append(button(mine ? "Add it to my plan" : "Make it my plan", () => {
      const list = [...plan.ideas(), ...known()];
      sent = null;
      history.replaceState(null, "", location.pathname);
      plan.keep(list);
      status.textContent = "It is in your plan now, on this device.";
    }, "", ""));
    return line;
  };

  const draw = () => {
    const list = known(), gone = names().length - list.length;
    holder.replaceChildren();
    about.hidden = list.length > 0;
    if (sent) holder.append(sentLine());
    const [many, are] = gone === 1 ? ["One idea", "is"] : [`${gone} ideas`, "are"];
    if (gone) holder.append(element("p", "note-box", `${many} of this plan ${are} no longer here.`));
    if (!list.length) return;
    const ideas = list.map((name) => data.ideas[name]);
    const first = element("section", "plan-list"), order = element("ol", "plan-ideas");
    const number = list.length === 1 ? "1 idea" : `${list.length} ideas`;
    first.append(element("h2", "", `${number}, ${minutesIn(ideas)} minutes`), order);
    order.append(...list.map((name, at) => ideaItem(name, at, list.length)));
    const onSize = (size) => { children = size; };
    holder.append(first, ...planMaterials(data, numbered(), { children, usual, onSize }), share());
  };

  const open = async () => {
    if (!names().length) return;
    try {
      data ??= await load("plan-data");
      draw();
    } catch {
      status.textContent = "The plan could not be opened just now. Try again when you are connected.";
    }
  };
  document.addEventListener("plan-changed", () => (data ? draw() : open()));
  open();
})();
