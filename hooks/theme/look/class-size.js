/* Lets a teacher change the class size; every quantity follows. Without this the table is right for the size it says. */
(() => {
  const table = document.querySelector("table.materials[data-class-size]");
  if (!table) return;
  const size = document.createElement("input");
  size.type = "number";
  size.min = "1";
  size.max = "60";
  size.value = table.dataset.classSize;
  size.id = "class-size";
  size.inputMode = "numeric";
  const label = document.createElement("label");
  label.htmlFor = size.id;
  label.textContent = "Children in the class ";
  const line = document.createElement("p");
  line.className = "class-size";
  line.append(label, size);
  table.closest(".table-frame").before(line);

  const fill = () => {
    const children = Math.min(60, Math.max(1, Number.parseInt(size.value, 10) || Number(table.dataset.classSize)));
    table.querySelector("[data-class-of]").textContent = String(children);
    for (const cell of table.querySelectorAll("td[data-count]")) {
      const each = Number(cell.dataset.each);
      cell.textContent = String(Number(cell.dataset.count) * (each === 0 ? 1 : Math.ceil(children / each)));
    }
  };
  size.addEventListener("input", fill);
})();
