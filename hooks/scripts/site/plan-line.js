/* The line on the page of a session or home activity that puts it into the plan. */
import { at } from "./address.js";
import { element, link } from "./element.js";
import { planButton } from "./plan-button.js";
import { ideas, isIn, nameOf } from "./plan-list.js";

/** @type {(place: Element) => void} */
const offer = (place) => {
  const name = nameOf(location.href), line = element("p", "plan-line"), said = element("span", "plan-said");
  said.setAttribute("role", "status");
  const button = planButton(name);
  button.addEventListener("click", () => {
    const number = ideas().length;
    said.replaceChildren();
    if (!isIn(name)) said.textContent = "Taken out.";
    else said.append("Added. ", link(at("plan.html"), number === 1 ? "My plan has 1 idea" : `My plan has ${number} ideas`));
  });
  line.append(button, said);
  place.append(line);
};

const place = document.querySelector(".masthead > div") ?? document.querySelector("main header");
if (place) offer(place);
