/* The finder: asks its columns and the text, shows what fits, best first, and keeps the question in the address. */
(() => {
  const { finder, element, load } = window.storymaths;
  const place = document.querySelector("[data-finder]");
  if (!place) return;
  const WIDE = matchMedia("(min-width: 60rem)");
  const PAUSE = 40; // milliseconds without a key before the text is searched
  finder.PAGE = 30;

  const part = (selector) => place.querySelector(selector);
  const form = part("form"), words = part("#find-q"), status = part(".finder-status"), chips = part(".chips");
  const results = part(".results"), index = part(".finder-index");
  const help = element("div", "finder-help"), done = element("button", "narrow-done");
  const showMore = element("button", "quiet show-more", "Show more");
  let data, facets, state, scores = null, found = new Map(), looking = false, waiting = 0, saying = 0, typedFrom = "";

  /* The words above, what narrows beside, what was found in the middle. */
  const layOut = () => {
    const beside = element("details", "narrow"), main = element("div", "finder-found");
    beside.append(element("summary", "", "Narrow it down"), form.querySelector(".facets"), done);
    done.type = "button";
    done.addEventListener("click", () => { // on a phone what was found is below, out of sight
      beside.open = false;
      status.focus();
      main.scrollIntoView();
    });
    status.tabIndex = -1;
    main.append(status, chips, help, results, showMore);
    form.after(beside, main);
    showMore.type = "button";
    const fit = () => { beside.open = WIDE.matches; };
    WIDE.addEventListener("change", fit);
    fit();
    place.classList.add("ready");
    return beside.querySelector(".facets");
  };

  const say = (text, later) => {
    clearTimeout(saying);
    saying = setTimeout(() => { if (status.textContent !== text) status.textContent = text; }, later ? 350 : 0);
  };
  const ideasIn = (number) => (number === 1 ? "1 idea" : `${number} ideas`);

  const draw = (later = false) => {
    scores = finder.wordScores(data, state.q, found);
    const counted = finder.count(data, state.chosen, scores);
    for (const facet of facets) facet.show(state, counted);
    finder.drawChips(data, chips, state, { takeAway: (value) => choose(value, false), clear });
    const fitting = finder.rank(data, counted.fitting, state, scores);
    done.textContent = fitting.length ? `Show ${ideasIn(fitting.length)}` : "Show the nearest";
    results.classList.toggle("looking", looking);
    results.setAttribute("aria-busy", String(looking));
    help.replaceChildren();
    if (fitting.length) drawFound(fitting, later);
    else if (looking) say("Looking in the text …", later);
    else drawNearest(counted, later);
    const pages = finder.drawPagesToo(data, state.q);
    if (pages) help.prepend(pages);
  };

  const cards = (rows, alsoTold = () => []) => rows.map((row) => {
    const reasons = [...alsoTold(row), ...finder.reasons(data, data.ideas[row], state, scores)];
    const hit = finder.inTitle(scores, row) ? undefined : found.get(row);
    return finder.drawCard(data, row, reasons, finder.wordsOf(state.q), hit);
  });

  const drawFound = (fitting, later) => {
    const most = Math.max(finder.PAGE, state.shown);
    results.replaceChildren(...cards(fitting.slice(0, most)));
    showMore.hidden = fitting.length <= most;
    showMore.onclick = () => {
      const already = results.children.length;
      results.append(...cards(fitting.slice(already, already + finder.PAGE)));
      state.shown = results.children.length;
      finder.writeAddress(data, state, true);
      showMore.hidden = state.shown >= fitting.length;
      results.children[already].querySelector("a").focus();
      say(`${ideasIn(fitting.length)}, ${state.shown} shown.`);
    };
    const asked = state.q || state.order.length;
    const shown = fitting.length > most ? `, the ${asked ? "best " : "first "}${most} shown` : "";
    say(`${ideasIn(fitting.length)}${asked ? " found" : " in all"}${shown}.`, later);
  };

  const drawNearest = (counted, later) => {
    const { offers, rows, reasonFor } = finder.nearest(data, state, scores, counted, { choose, ask, clear });
    help.append(...offers.map(([text, act]) => {
      const button = element("button", "quiet", text);
      button.type = "button";
      button.addEventListener("click", () => { act(); words.focus(); });
      return button;
    }));
    results.replaceChildren(...cards(rows, (row) => [reasonFor(row)]));
    showMore.hidden = true;
    const shown = rows.length === 1 ? " The nearest is shown." : ` The ${rows.length} nearest are shown.`;
    say(`Nothing has all of that.${rows.length ? shown : state.q ? " Try other words, or fewer." : ""}`, later);
  };

  const choose = (value, on) => {
    state.chosen[value] = on ? 1 : 0;
    state.order = on ? [...state.order, value] : state.order.filter((other) => other !== value);
    state.shown = 0;
    finder.writeAddress(data, state, false);
    draw();
  };

  const clear = () => {
    state.chosen.fill(0);
    state.order = [];
    ask("");
    words.focus();
  };

  const ask = (q) => {
    words.value = q;
    state.q = q;
    state.shown = 0;
    finder.writeAddress(data, state, false);
    lookUp();
  };

  /* Titles answer at once, the text as soon as it can; an answer to an older question is dropped. */
  const lookUp = async (pause = 0) => {
    const { q } = state;
    clearTimeout(waiting);
    found = new Map();
    looking = q.length > 1 || /[^\p{L}\s]/u.test(q);
    draw(pause > 0);
    if (!looking) return;
    finder.openText();
    await new Promise((resolve) => { waiting = setTimeout(resolve, pause); });
    const hits = await finder.findText(q).catch(() => new Map());
    if (q !== state.q) return;
    [found, looking] = [hits, false];
    draw();
  };

  const start = () => {
    state = finder.readAddress(data);
    words.value = state.q;
    typedFrom = state.q;
    return lookUp();
  };

  const listen = () => {
    form.addEventListener("submit", (event) => event.preventDefault());
    words.addEventListener("focus", () => { typedFrom = state.q; });
    words.addEventListener("change", () => { typedFrom = state.q; });
    words.addEventListener("input", () => {
      const first = state.q === typedFrom; // one step back in the history undoes a whole stretch of typing
      state.q = words.value.trim();
      state.shown = 0;
      finder.writeAddress(data, state, !first);
      lookUp(PAUSE);
    });
    addEventListener("popstate", start);
  };

  load("finder-data").then((columns) => {
    data = finder.read(columns);
    facets = finder.drawFacets(data, layOut(), choose);
    state = finder.readAddress(data);
    for (const { details, used } of facets) details.open = used.some(({ number }) => state.chosen[number]);
    listen();
    start();
    form.hidden = false;
    results.hidden = false;
    index.hidden = true;
  }).catch(() => {
    status.textContent = "The finder could not start; the lists below answer the same questions.";
  });
})();
