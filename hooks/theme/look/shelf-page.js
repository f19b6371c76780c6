/* The page of the shortest shelf: which books a reader owns, for which year, and the answers worked out here. */
(() => {
  const { load, element, ownedBooks, shelfAnswers } = window.storymaths;
  const place = document.querySelector("[data-shelf]");
  if (!place) return;
  const MANY = 12; // books before there is a box to find one in
  const yearName = (year) => (year === 0 ? "Reception" : `Year ${year}`);
  const status = element("p", "shelf-status"), answers = element("div", "shelf-answers");
  status.setAttribute("role", "status");

  const chooser = (questions) => {
    const line = element("p", "shelf-line"), label = element("label", "", "For"), choice = element("select");
    label.htmlFor = choice.id = "shelf-question";
    questions.forEach(({ year, name }, at) => {
      const option = element("option", "", `${yearName(year)}, ${name}`);
      option.value = String(at);
      choice.append(option);
    });
    line.append(label, choice);
    return [line, choice];
  };

  const ticks = (books, owned) => {
    const field = element("fieldset", "shelf-books"), boxes = element("div", "shelf-boxes");
    for (const [id, title] of books) {
      const label = element("label"), box = element("input");
      Object.assign(box, { type: "checkbox", value: id, checked: owned.has(id) });
      label.append(box, element("span", "", title));
      boxes.append(label);
    }
    field.append(element("legend", "", "Books we own"));
    if (books.length > MANY) field.append(finder(boxes));
    field.append(boxes);
    return [field, boxes];
  };

  /* A box to find a book in; what is ticked stays in sight. */
  const finder = (boxes) => {
    const line = element("p", "shelf-line"), label = element("label", "", "Find a book"), box = element("input");
    label.htmlFor = box.id = "shelf-find";
    box.type = "search";
    box.autocomplete = "off";
    box.addEventListener("input", () => {
      const wanted = box.value.trim().toLowerCase();
      for (const one of boxes.children) {
        one.hidden = !one.querySelector("input").checked && !one.textContent.toLowerCase().includes(wanted);
      }
    });
    line.append(label, box);
    return line;
  };

  const open = async () => {
    const data = await load("shelf-data");
    const questions = data.questions.filter(({ books }) => books.length).sort((a, b) => a.year - b.year);
    if (!questions.length) return;
    const books = new Map(data.books.map((book) => [book[0], book]));
    const owned = new Set(ownedBooks.ids());
    const named = (question) => ({ ...question, books: question.books.map(([at, ...rest]) => [data.books[at][0], ...rest]) });
    const [line, choice] = chooser(questions), [field, boxes] = ticks(data.books, owned);
    const forget = element("button", "quiet", "Forget them");
    forget.type = "button";

    const show = () => {
      const question = named(questions[choice.value]);
      forget.hidden = !owned.size;
      status.textContent = "Working it out …";
      setTimeout(() => { // first let the tick be seen
        answers.replaceChildren(...shelfAnswers(question, owned, books, data.caps));
        status.textContent = `For ${yearName(question.year)}, ${question.name}, with ${[...owned].filter((id) => books.has(id)).length} of ${data.books.length} books:`;
      });
    };
    const tick = () => {
      const inSight = [...boxes.querySelectorAll("input")];
      const unknown = [...owned].filter((id) => !books.has(id)); // a book may come back
      owned.clear();
      [...unknown, ...inSight.filter((box) => box.checked).map((box) => box.value)].forEach((id) => owned.add(id));
      ownedBooks.keep([...owned]);
      show();
    };
    boxes.addEventListener("change", tick);
    choice.addEventListener("change", show);
    forget.addEventListener("click", () => {
      boxes.querySelectorAll("input").forEach((box) => { box.checked = false; });
      owned.clear();
      tick();
      choice.focus();
    });
    place.querySelector(".shelf-without").remove();
    place.append(line, field, forget, status, answers);
    show();
  };
  open().catch(() => {
    place.append(status);
    status.textContent = "The books could not be opened just now. Try again when you are connected.";
  });
})();
