/* Lets a teacher change the class size; every quantity follows. Without this the table is right as it says. */
import { classSize } from "../site/class-size.js";
import { element } from "../site/element.js";
import { all } from "../site/find.js";

/** @type {(table: HTMLElement) => void} */
const follow = (table) => {
  const usual = Number(table.dataset.classSize), { line, size, taken } = classSize(usual, usual);
  const said = element("span", "only-heard");
  said.setAttribute("role", "status");
  line.append(said);
  (table.closest(".table-frame") ?? table).before(line);

  /* A part of a pair or group counts whole: each cell says how many, and for how many children one lot is. */
  const fill = () => {
    const children = taken();
    for (const place of table.querySelectorAll("[data-class-of]")) place.textContent = String(children);
    for (const cell of all(table, "td[data-count]", HTMLElement)) {
      const each = Number(cell.dataset.each);
      cell.textContent = String(Number(cell.dataset.count) * (each === 0 ? 1 : Math.ceil(children / each)));
    }
    return children;
  };
  size.addEventListener("input", fill);
  size.addEventListener("change", () => {
    size.value = String(fill());
    said.textContent = `The table is for ${size.value} children.`;
  });
};

/** @type {HTMLElement | null} */
const table = document.querySelector("table.materials[data-class-size]");
if (table) follow(table);
