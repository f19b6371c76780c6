/* Lets a teacher change the class size; every quantity follows. Without this the table is right as it says. */
(() => {
  const table = document.querySelector("table.materials[data-class-size]");
  if (!table) return;
  const usual = Number(table.dataset.classSize), MOST = 60;

  const [line, label, size] = ["p", "label", "input"].map((name) => document.createElement(name));
  line.className = "class-size";
  label.htmlFor = size.id = "class-size";
  label.textContent = "Children in the class";
  Object.assign(size, { type: "number", min: "1", max: String(MOST), value: String(usual) });
  Object.assign(size, { inputMode: "numeric", autocomplete: "off" });
  const said = document.createElement("span");
  said.className = "only-heard";
  said.setAttribute("role", "status");
  line.append(label, " ", size, said);
  (table.closest(".table-frame") ?? table).before(line);

  /* A part of a pair or group counts whole: each cell says how many, and for how many children one lot is. */
  const fill = () => {
    const asked = Number.parseInt(size.value, 10);
    const children = Math.min(MOST, Math.max(1, asked || usual));
    for (const place of table.querySelectorAll("[data-class-of]")) place.textContent = String(children);
    for (const cell of table.querySelectorAll("td[data-count]")) {
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
})();
