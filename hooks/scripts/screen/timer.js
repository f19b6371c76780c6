/* A quiet timer for a step: a line that grows shorter, and the minutes left. No sound, no flashing; it waits to be asked. */
/** @import { Memory } from "./memory.js" */
/** @import { Say } from "./say.js" */
/** @import { Slides } from "./slides.js" */
import { button, element } from "../site/element.js";

/** @type {(seconds: number) => string} */
const leftInWords = (seconds) => {
  const minutes = Math.ceil(seconds / 60);
  return seconds <= 0 ? "Time to finish" : minutes === 1 ? "1 minute left" : `${minutes} minutes left`;
};

/** @type {(steps: HTMLElement[], slides: Slides, memory: Memory, say: Say) => void} */
export const openTimer = (steps, { bar, current, onShow }, memory, say) => {
  if (!steps.length) return;
  const holder = element("span", "timer"), which = element("select");
  which.setAttribute("aria-label", "Time a step");
  steps.forEach((step, n) => {
    const option = element("option", "", step.textContent?.trim().replace(/\s+/g, " "));
    option.value = String(n);
    which.append(option);
  });
  const left = element("progress", "left"), told = element("span", "told-time");
  left.setAttribute("aria-label", "Time left");
  const go = button("Time", () => (running ? pause() : start()), "go");
  holder.append(which, go, told);
  bar.append(left, holder);

  const whole = () => Number(steps[Number(which.value)].dataset.minutes) * 60;
  /** @type {number | null} */
  let rest = null;
  let running = 0, ticking = 0, begun = 0;

  const show = () => {
    left.hidden = told.hidden = rest === null;
    go.textContent = running ? "Pause" : rest === null ? "Time" : "Go on";
    if (rest === null) return;
    left.max = whole();
    left.value = Math.max(0, rest);
    told.textContent = leftInWords(rest);
  };
  const day = () => new Date().toDateString();
  const keep = () => memory.set("timer", {
    day: day(), step: which.value, rest, until: running ? running + Number(begun) * 1000 : 0,
  });
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
  const clear = () => {
    rest = null;
    pause();
  };
  which.addEventListener("change", clear);
  // It follows the step of the slide, but time that runs or waits for a step is not taken away by a look ahead.
  onShow(() => {
    const { step } = current().dataset;
    if (step === undefined || step === which.value || (rest !== null && rest > 0)) return;
    which.value = step;
    clear();
  });

  const kept = /** @type {{ day?: unknown, step?: unknown, rest?: unknown, until?: unknown } | undefined} */ (memory.get("timer"));
  if (kept?.day === day() && steps[Number(kept.step)]) {
    which.value = String(kept.step);
    rest = typeof kept.rest === "number" ? kept.rest : null;
    if (kept.until) {
      rest = Math.max(0, (Number(kept.until) - Date.now()) / 1000);
      if (rest > 0) start();
    }
  }
  show();
};
