/* Keeps the adult's notes out of sight until they are asked for, and puts them away again when the leaf is turned. */
(() => {
  const { screenBar } = window.storymaths;
  const screen = document.querySelector("[data-screen]");
  if (!screenBar) return;
  screen.classList.add("notes-away");
  let shown = false;
  const toggle = screenBar.button("Notes", "notes", () => set(!shown));
  toggle.setAttribute("aria-pressed", "false");
  screenBar.bar.append(toggle);

  const set = (wanted) => {
    shown = wanted;
    toggle.setAttribute("aria-pressed", String(shown));
    screen.classList.toggle("notes-away", !shown);
    for (const notes of screenBar.current().querySelectorAll(".adult")) notes.open = shown;
    screen.dispatchEvent(new CustomEvent("notes-turned", { detail: shown }));
  };
  screen.addEventListener("leaf-shown", () => {
    for (const notes of screen.querySelectorAll(".adult")) notes.open = false;
    set(false);
    toggle.disabled = !screenBar.current().querySelector(".adult");
  });
  document.addEventListener("keydown", (event) => {
    if (event.key.toLowerCase() === "n" && !event.ctrlKey && !event.altKey && !event.metaKey && !toggle.disabled
      && !event.target.closest("select, input")) set(!shown);
  });
})();
