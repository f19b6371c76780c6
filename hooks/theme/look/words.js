/* Shows what a word means beside the word. Without this the link leads to the meanings at the foot of the page. */
(() => {
  let card = null;

  const hide = () => {
    card?.remove();
    card = null;
  };

  const show = (link) => {
    hide();
    const term = document.querySelector(link.getAttribute("href"));
    const meaning = term?.parentElement.querySelector("dd");
    if (!meaning) return;
    card = document.createElement("div");
    card.className = "meaning-card";
    card.setAttribute("role", "tooltip");
    card.id = "meaning-card";
    card.textContent = `${term.textContent}: ${meaning.textContent}`;
    document.body.append(card);
    const box = link.getBoundingClientRect();
    const left = Math.min(box.left, window.innerWidth - card.offsetWidth - 16);
    card.style.left = `${Math.max(8, left) + window.scrollX}px`;
    card.style.top = `${box.bottom + 6 + window.scrollY}px`;
    link.setAttribute("aria-describedby", "meaning-card");
  };

  for (const link of document.querySelectorAll("a.word")) {
    link.addEventListener("mouseenter", () => show(link));
    link.addEventListener("focus", () => show(link));
    link.addEventListener("blur", hide);
    link.addEventListener("mouseleave", (event) => {
      if (event.relatedTarget !== card) hide();
    });
  }
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape") hide();
  });
  document.addEventListener("pointerdown", (event) => {
    if (card && !card.contains(event.target)) hide();
  });
})();
