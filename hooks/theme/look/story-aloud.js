/*
 * Reads a page of a story aloud in a voice the device itself has. Voices that send the words to somebody's server are
 * left out: nothing leaves this site. Without an English voice on the device there is no button.
 */
(() => {
  const story = document.querySelector("[data-story]");
  const holder = document.querySelector(".story-more");
  const speech = window.speechSynthesis;
  if (!story || !holder || !speech) return;
  let button = null, page = story.querySelector(".spread.open");

  const english = () => {
    const voices = speech.getVoices().filter(({ lang, localService }) => localService && /^en\b/i.test(lang));
    return voices.find(({ lang }) => /^en[-_]GB/i.test(lang)) ?? voices[0];
  };

  const stopped = () => {
    button.textContent = "Read aloud";
    button.classList.remove("reading-aloud");
  };

  const stop = () => {
    if (!button?.classList.contains("reading-aloud")) return;
    speech.cancel();
    stopped();
  };

  const start = () => {
    const words = page?.querySelector(".told")?.innerText.trim();
    if (!words) return;
    speech.cancel();
    const saying = new SpeechSynthesisUtterance(words);
    saying.voice = english();
    saying.lang = saying.voice.lang;
    saying.rate = 0.9;
    saying.onend = stopped;
    button.textContent = "Stop reading";
    button.classList.add("reading-aloud");
    speech.speak(saying);
  };

  const offer = () => {
    if (button || !english()) return;
    button = document.createElement("button");
    button.type = "button";
    button.className = "quiet story-aloud";
    button.textContent = "Read aloud";
    button.addEventListener("click", () => (button.classList.contains("reading-aloud") ? stop() : start()));
    button.hidden = !story.closest(".one-at-a-time");
    holder.prepend(button);
  };

  story.addEventListener("page-turned", (event) => {
    stop();
    page = event.detail;
    if (button) button.hidden = !story.closest(".one-at-a-time");
  });
  document.addEventListener("keydown", (event) => event.key === "Escape" && stop());
  addEventListener("pagehide", stop);
  speech.addEventListener?.("voiceschanged", offer);
  offer();
})();
