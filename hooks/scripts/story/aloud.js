/*
 * Reads a page of a story aloud in a voice the device itself has. Voices that send the words to somebody's server are
 * left out: nothing leaves this site. Without an English voice on the device there is no button.
 */
/** @import { Reader } from "./reader.js" */
import { button } from "../site/element.js";
import { all } from "../site/find.js";

/** @type {(speech: SpeechSynthesis) => SpeechSynthesisVoice | undefined} */
const english = (speech) => {
  const voices = speech.getVoices().filter(({ lang, localService }) => localService && /^en\b/i.test(lang));
  return voices.find(({ lang }) => /^en[-_]GB/i.test(lang)) ?? voices[0];
};

/** @type {(reader: Reader, speech: SpeechSynthesis) => void} */
const open = ({ more, page, isReading, onTurn }, speech) => {
  let isAloud = false;
  const toggle = button("Read aloud", () => (isAloud ? stop() : start()), "quiet story-aloud");

  /** @type {(aloud: boolean) => void} */
  const show = (aloud) => {
    isAloud = aloud;
    toggle.textContent = aloud ? "Stop reading" : "Read aloud";
    toggle.classList.toggle("reading-aloud", aloud);
  };
  const stop = () => {
    if (!isAloud) return;
    speech.cancel();
    show(false);
  };
  const start = () => {
    const [told] = all(page(), ".told", HTMLElement), words = told?.innerText.trim(), voice = english(speech);
    if (!words || !voice) return;
    speech.cancel();
    const saying = new SpeechSynthesisUtterance(words);
    Object.assign(saying, { voice, lang: voice.lang, rate: 0.9, onend: () => show(false) });
    show(true);
    speech.speak(saying);
  };
  const offer = () => {
    if (toggle.isConnected || !english(speech)) return;
    toggle.hidden = !isReading();
    more.prepend(toggle);
  };

  onTurn(() => {
    stop();
    toggle.hidden = !isReading();
  });
  document.addEventListener("keydown", (event) => event.key === "Escape" && stop());
  addEventListener("pagehide", stop);
  speech.addEventListener?.("voiceschanged", offer);
  offer();
};

/** @type {(reader: Reader) => void} */
export const openAloud = (reader) => {
  if (window.speechSynthesis) open(reader, window.speechSynthesis);
};
