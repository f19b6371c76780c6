/*
 * Shows what a word means beside the word: under the pointer, on keyboard focus, or at a first tap (a second follows
 * the link). The card can be pointed at, stays until left, and goes with Escape. Without this the link leads to the
 * meanings at the foot of the page.
 */
(() => {
  const GRACE = 250; // time to move from the word to its card
  let card = null, owner = null, leaving = 0, tapped = null;

  const hide = () => {
    clearTimeout(leaving);
    owner?.removeAttribute("aria-describedby");
    card?.remove();
    card = owner = null;
  };

  const stay = () => clearTimeout(leaving);
  const leave = () => {
    clearTimeout(leaving);
    leaving = setTimeout(hide, GRACE);
  };

  const place = (link) => {
    const box = link.getClientRects()[0] ?? link.getBoundingClientRect();
    const room = document.documentElement.clientWidth - card.offsetWidth - 8;
    const below = box.bottom + 6, above = box.top - card.offsetHeight - 6;
    const fits = below + card.offsetHeight <= document.documentElement.clientHeight || above < 0;
    card.style.left = `${Math.max(8, Math.min(box.left, room)) + scrollX}px`;
    card.style.top = `${(fits ? below : above) + scrollY}px`;
  };

  const show = (link) => {
    stay();
    if (owner === link) return;
    hide();
    const term = document.getElementById(link.hash.slice(1));
    const meaning = term?.closest("dt, div, li")?.parentElement.querySelector("dd") ?? term?.querySelector("dd");
    if (!meaning) return;
    owner = link;
    card = document.createElement("div");
    card.id = "meaning-card";
    card.className = "meaning-card";
    card.setAttribute("role", "tooltip");
    const word = document.createElement("strong");
    word.textContent = (term.matches("dt") ? term : term.querySelector("dt") ?? term).textContent;
    card.append(word, meaning.textContent);
    card.addEventListener("mouseenter", stay);
    card.addEventListener("mouseleave", leave);
    (link.closest("main") ?? document.body).append(card); // inside a landmark, like all that is read
    place(link);
    link.setAttribute("aria-describedby", card.id);
  };

  for (const link of document.querySelectorAll("a.word[href^='#']")) {
    link.addEventListener("pointerenter", (event) => event.pointerType === "mouse" && show(link));
    link.addEventListener("pointerleave", (event) => {
      if (event.pointerType === "mouse" && document.activeElement !== link) leave();
    });
    link.addEventListener("pointerdown", (event) => {
      tapped = event.pointerType === "mouse" ? null : { link, shown: owner === link };
    });
    link.addEventListener("focus", () => show(link));
    link.addEventListener("blur", leave);
    link.addEventListener("click", (event) => {
      const first = tapped?.link === link && !tapped.shown;
      tapped = null;
      if (!first) return hide();
      event.preventDefault();
      show(link);
    });
  }

  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && card) hide();
  });
  document.addEventListener("pointerdown", (event) => {
    if (card && !card.contains(event.target) && !owner.contains(event.target)) hide();
  });
})();
