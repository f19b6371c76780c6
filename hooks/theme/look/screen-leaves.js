/* Shows one leaf at a time, turned by keys, a clicker, a swipe or the bar below, and remembers which. */
(() => {
  const { element, memory, say } = window.storymaths;
  const screen = document.querySelector("[data-screen]");
  const leaves = [...(screen?.querySelectorAll(".leaf") ?? [])];
  if (!leaves.length) return;
  screen.classList.add("one-at-a-time");
  let at = Math.min(Number(memory.get("leaf")) || 0, leaves.length - 1);

  const button = (words, className, act) => {
    const made = element("button", className, words);
    made.type = "button";
    made.addEventListener("click", act);
    return made;
  };
  const bar = element("nav", "screen-bar");
  bar.setAttribute("aria-label", "The class screen");
  const where = element("select", "where");
  where.setAttribute("aria-label", "Go to");
  leaves.forEach((leaf, n) => {
    const option = element("option", "", `${n + 1} · ${leaf.querySelector("h2").textContent}`);
    option.value = n;
    where.append(option);
  });
  where.addEventListener("change", () => turn(Number(where.value)));
  const back = button("Back", "turn back", () => turn(at - 1));
  const on = button("Next", "turn on", () => turn(at + 1));
  bar.append(back, where, on);
  screen.append(bar);

  const show = () => {
    leaves.forEach((leaf, n) => { leaf.hidden = n !== at; });
    where.value = at;
    back.disabled = at === 0;
    on.disabled = at === leaves.length - 1;
    screen.dispatchEvent(new CustomEvent("leaf-shown", { detail: leaves[at] }));
  };
  const turn = (to) => {
    const next = Math.max(0, Math.min(leaves.length - 1, to));
    if (next === at) return;
    at = next;
    memory.set("leaf", at);
    show();
    say(`${at + 1} of ${leaves.length}: ${leaves[at].querySelector("h2").textContent}`);
    window.scrollTo(0, 0);
  };

  const forward = new Set(["PageDown", "ArrowRight", " "]), backward = new Set(["PageUp", "ArrowLeft"]);
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
    if (event.target.closest("button, select, input, a, summary, [tabindex]:not(main)") && !event.key.startsWith("Page")) return;
    if (forward.has(event.key)) turn(at + 1);
    else if (backward.has(event.key)) turn(at - 1);
    else if (event.key === "Home") turn(0);
    else if (event.key === "End") turn(leaves.length - 1);
    else return;
    event.preventDefault();
  });

  let down = null;
  screen.addEventListener("pointerdown", (event) => {
    down = event.pointerType === "touch" && !event.target.closest("[data-board], button, select, a, summary") ? event : null;
  });
  screen.addEventListener("pointerup", (event) => {
    if (!down || event.pointerType !== "touch") return;
    const across = event.clientX - down.clientX, along = event.clientY - down.clientY;
    if (Math.abs(across) > 60 && Math.abs(across) > 2 * Math.abs(along)) turn(at + (across < 0 ? 1 : -1));
    down = null;
  });

  window.storymaths.screenBar = { bar, button, current: () => leaves[at] };
  // The other scripts of the screen follow this one and listen for the first leaf too.
  addEventListener("DOMContentLoaded", show);
})();
