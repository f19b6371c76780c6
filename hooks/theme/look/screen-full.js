/* Lets the class screen fill the whole screen, where the browser can; and lets it begin afresh. */
(() => {
  const { memory, screenBar } = window.storymaths;
  if (!screenBar) return;
  if (document.fullscreenEnabled) {
    const full = screenBar.button("Full screen", "full", () => {
      const change = document.fullscreenElement ? document.exitFullscreen() : document.documentElement.requestFullscreen();
      change.catch(() => {}); // refused: the page stays as it is
    });
    document.addEventListener("fullscreenchange", () => {
      full.textContent = document.fullscreenElement ? "Smaller" : "Full screen";
    });
    screenBar.bar.append(full);
  }
  let asked = false;
  const afresh = screenBar.button("Begin again", "afresh", () => {
    if (asked) {
      memory.clear();
      location.reload();
      return;
    }
    asked = true;
    afresh.textContent = "Forget all that was tried?";
    setTimeout(() => { asked = false; afresh.textContent = "Begin again"; }, 5000);
  });
  screenBar.bar.append(afresh);
})();
