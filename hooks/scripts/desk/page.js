/* What every page of the desk runs. */
import { letGoFromPartToPart } from "./keys.js";
import { openPage } from "./open-page.js";
import { letBegin } from "./start.js";

const page = document.querySelector("[data-source]"), begin = document.querySelector("#new-page");
letGoFromPartToPart();
if (page instanceof HTMLElement) openPage(page);
if (begin instanceof HTMLFormElement) {
  letBegin(begin);
  setInterval(() => void fetch("/state"), 60_000); // keeps the desk going
}
