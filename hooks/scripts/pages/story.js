/* The pages of a story. */
import "../site/plan-count.js";
import { openAloud } from "../story/aloud.js";
import { openFull } from "../story/full.js";
import { openReader } from "../story/reader.js";

/** @type {HTMLElement | null} */
const story = document.querySelector("[data-story]");
const reader = story && openReader(story);
if (reader) {
  openAloud(reader);
  openFull(reader);
}
