/* Turns the column of a story's pages into one page at a time. The page is in the address, so it can be linked to. */
(() => {
  const story = document.querySelector("[data-story]");
  const pages = story ? [...story.querySelectorAll(".spread")] : [];
  if (pages.length < 2) return;
  const SWIPE = 50;
  let here = -1, reading = true;

  const button = (name, words, act) => {
    const made = document.createElement("button");
    made.type = "button";
    made.className = name;
    made.textContent = words;
    made.addEventListener("click", act);
    return made;
  };
  const said = document.createElement("span");
  said.className = "story-place";
  said.setAttribute("role", "status");
  const previous = button("story-previous", "Previous", () => turnTo(here - 1));
  const next = button("story-next", "Next", () => turnTo(here + 1));
  const all = button("quiet story-all", "All pages", () => showAll(reading));
  const turning = document.createElement("div"), more = document.createElement("div");
  const bar = document.createElement("div");
  bar.className = "story-bar";
  bar.setAttribute("role", "group");
  bar.setAttribute("aria-label", "Pages of the story");
  turning.className = "story-turning";
  more.className = "story-more";
  turning.append(previous, said, next);
  more.append(all);
  bar.append(turning, more);

  const frame = document.createElement("div");
  frame.className = "story-frame";
  story.before(frame);
  frame.append(story, bar);
  for (const page of pages) page.tabIndex = -1;

  const show = (page) => {
    here = page;
    pages.forEach((spread, n) => spread.classList.toggle("open", n === page));
    said.textContent = `Page ${page + 1} of ${pages.length}`;
    previous.setAttribute("aria-disabled", String(page === 0));
    next.setAttribute("aria-disabled", String(page === pages.length - 1));
    for (const picture of pages[page + 1]?.querySelectorAll("img") ?? []) picture.loading = "eager"; // next turn's
    story.dispatchEvent(new CustomEvent("page-turned", { detail: pages[page] }));
  };

  const turnTo = (page) => {
    if (page < 0 || page >= pages.length || page === here) return;
    show(page);
    history.replaceState(null, "", `#${pages[page].id}`);
    if (frame.getBoundingClientRect().top < 0) frame.scrollIntoView();
  };

  const showAll = (column) => {
    reading = !column;
    frame.classList.toggle("one-at-a-time", reading);
    turning.hidden = column;
    all.textContent = column ? "One page at a time" : "All pages";
    story.dispatchEvent(new CustomEvent("page-turned", { detail: pages[here] }));
  };

  /* A link to a page, and back and forward, move there as links do: focus too. */
  const follow = (focus) => {
    const page = pages.findIndex(({ id }) => `#${id}` === location.hash);
    show(page < 0 ? Math.max(here, 0) : page);
    if (page >= 0 && focus) pages[page].focus();
  };

  addEventListener("hashchange", () => follow(true));
  document.addEventListener("keydown", (event) => {
    if (!reading || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (event.target.closest("input, select, textarea")) return;
    if (event.key === "ArrowRight") turnTo(here + 1);
    else if (event.key === "ArrowLeft") turnTo(here - 1);
  });

  let from = null;
  story.addEventListener("touchstart", ({ touches }) => {
    const plain = touches.length === 1 && (window.visualViewport?.scale ?? 1) === 1; // not while zoomed in
    from = plain ? { x: touches[0].clientX, y: touches[0].clientY } : null;
  }, { passive: true });
  story.addEventListener("touchend", ({ changedTouches }) => {
    if (!from || !reading) return;
    const across = changedTouches[0].clientX - from.x, down = changedTouches[0].clientY - from.y;
    from = null;
    if (Math.abs(across) > SWIPE && Math.abs(across) > Math.abs(down) * 2) turnTo(here + (across < 0 ? 1 : -1));
  });

  story.setAttribute("aria-live", "polite"); // a turned page is read out while focus stays on its button
  showAll(false);
  follow(location.hash !== "");
})();
