/* Shows beside the link to the plan how many ideas are in it. */
import { element } from "./element.js";
import { CHANGED, ideas } from "./plan-list.js";

const count = element("span", "plan-count");
document.querySelector('.top nav a[href$="plan.html"]')?.append(" ", count);

const show = () => {
  const number = ideas().length;
  count.textContent = number ? String(number) : "";
  count.hidden = number === 0;
};
document.addEventListener(CHANGED, show);
show();
