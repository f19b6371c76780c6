/* A quiet timer for a step: a line that grows shorter, and the minutes left. No sound, no flashing; it waits to be asked. */
(() => {
  const { element, memory, screenBar, say } = window.storymaths;
  const steps = [...document.querySelectorAll("[data-steps] li")];
  if (!screenBar || !steps.length) return;
  const holder = element("span", "timer");
  const which = element("select");
  which.setAttribute("aria-label", "Time a step");
  steps.forEach((step, n) => {
    const option = element("option", "", step.textContent.trim().replace(/\s+/g, " "));
    option.value = n;
    which.append(option);
  });
  const left = element("progress", "left");
  left.setAttribute("aria-label", "Time left");
  const told = element("span", "told-time");
  const go = screenBar.button("Time", "go", () => (running ? pause() : start()));
  holder.append(which, go, left, told);
  screenBar.bar.append(holder);

  const whole = () => Number(steps[which.value].dataset.minutes) * 60;
  let rest = null, running = 0, ticking = 0;

  const show = () => {
    left.hidden = told.hidden = rest === null;
    go.textContent = running ? "Pause" : rest === null ? "Time" : "Go on";
    if (rest === null) return;
    left.max = whole();
    left.value = Math.max(0, rest);
    const minutes = Math.ceil(rest / 60);
    told.textContent = rest <= 0 ? "Time to finish" : minutes === 1 ? "1 minute left" : `${minutes} minutes left`;
  };
  const keep = () => memory.set("timer", { step: which.value, rest, until: running ? running + rest * 1000 : 0 });
  let begun = 0;
  const tick = () => {
    rest = begun - (Date.now() - running) / 1000;
    if (rest <= 0) {
      rest = 0;
      pause();
      say("Time to finish");
    }
    show();
  };
  const start = () => {
    if (rest === null || rest <= 0) rest = whole();
    begun = rest;
    running = Date.now();
    ticking = setInterval(tick, 1000);
    keep();
    show();
  };
  const pause = () => {
    clearInterval(ticking);
    running = 0;
    keep();
    show();
  };
  which.addEventListener("change", () => {
    clearInterval(ticking);
    running = 0;
    rest = null;
    keep();
    show();
  });

  const kept = memory.get("timer");
  if (kept && steps[kept.step]) {
    which.value = kept.step;
    rest = typeof kept.rest === "number" ? kept.rest : null;
    if (kept.until) {
      rest = Math.max(0, (kept.until - Date.now()) / 1000);
      if (rest > 0) start();
    }
  }
  show();
})();
