/* Unpacks the finder’s columns into plain arrays: what each idea is, and which values of which facets it has, by number. */
(() => {
  const finder = (window.storymaths.finder ??= {});

  finder.FACETS = [
    ["year", "Year"], ["concept", "Concept"], ["kind", "Kind"], ["minutes", "Minutes"], ["print", "Printing"],
    ["things", "Things needed"], ["theme", "Theme"], ["book", "Book"],
  ];
  const SPANS = [[15, "up to 15"], [30, "16 to 30"], [45, "31 to 45"], [60, "46 to 60"], [Infinity, "more than 60"]];
  const spanOf = (minutes) => SPANS.findIndex(([most]) => minutes <= most);

  /* Every value of every facet, in the order shown. `number` finds one by facet and key. */
  const readValues = (columns) => {
    const values = [], number = new Map();
    const facet = (name) => finder.FACETS.findIndex(([key]) => key === name);
    const add = (name, key, words, more = {}) => {
      number.set(`${name}:${key}`, values.length);
      values.push({ number: values.length, facet: facet(name), name, key: String(key), words, ...more });
    };
    columns.years.forEach((words, year) => {
      add("year", year, words);
      add("year", `b${year}`, `bends to ${words}`, { bend: year });
    });
    const addConcepts = (strand, wider, depth) => columns.concepts.forEach(([key, name, of, under], concept) => {
      if (under !== wider || of !== strand) return;
      add("concept", key, name, { strand, depth });
      addConcepts(strand, concept, depth + 1);
    });
    columns.strands.forEach(([id, words], strand) => {
      add("concept", `strand-${id}`, words, { strand, whole: true });
      addConcepts(strand, -1, 0);
    });
    columns.kinds.forEach(([, key, words]) => add("kind", key, words));
    SPANS.forEach(([most, words]) => add("minutes", most === Infinity ? "more" : most, words));
    add("print", "nothing", "Nothing to print");
    add("print", "something", "Something to print");
    add("things", "kitchen", "Only kitchen things");
    add("things", "school", "School things too");
    columns.themes.forEach(([key, words]) => add("theme", key, words));
    return { values, number, add };
  };

  const numbers = (text) => (text === "" ? [] : text.split(" ").map(Number));

  /* The values a concept brings with it: itself, the wider ones it is part of, and its strand. */
  const lineage = (columns, number) => columns.concepts.map(([key, , strand, under]) => {
    const line = [number.get(`concept:${key}`)];
    for (let wider = under; wider >= 0; wider = columns.concepts[wider][3]) {
      line.push(number.get(`concept:${columns.concepts[wider][0]}`));
    }
    return [...line, number.get(`concept:strand-${columns.strands[strand][0]}`)];
  });

  finder.read = (columns) => {
    const { values, number, add } = readValues(columns);
    const { rows, books } = columns;
    const titles = rows.title.split("\n"), files = rows.file.split("\n"), minutes = rows.minutes.split(",");
    const concepts = rows.concepts.split(",").map(numbers), themes = rows.themes.split(",").map(numbers);
    const line = lineage(columns, number);
    const bookIds = books.id.split("\n"), covers = books.cover.split("\n");
    const ideas = [], first = [0], has = [], seen = [];
    let row = 0;
    bookIds.forEach((id, book) => {
      const folder = books.folder[book] ?? `books/${id}`, bookRow = row;
      let session = 0;
      add("book", id, titles[bookRow]);
      for (const last = row + rows.book[book]; row < last; row += 1) {
        const [, kind, , verb, card, of, planned] = columns.kinds.find(([letter]) => letter === rows.kind[row]);
        const give = (value) => {
          if (seen[value] !== row) { seen[value] = row; has.push(value); }
        };
        const year = rows.year[row] === "-" ? -1 : Number(rows.year[row]);
        const also = Number.parseInt(rows.also.slice(row * 2, row * 2 + 2), 16);
        if (year >= 0) give(number.get(`year:${year}`));
        for (let bend = 0; bend < 7; bend += 1) if (also >> bend & 1) give(number.get(`year:b${bend}`));
        for (const concept of concepts[row]) line[concept].forEach(give);
        give(number.get(`kind:${kind}`));
        const things = rows.things[row];
        if (minutes[row]) give(number.get("minutes:15") + spanOf(Number(minutes[row])));
        if (things !== "-") {
          give(number.get(things & 1 ? "print:nothing" : "print:something"));
          give(number.get(things & 2 ? "things:kitchen" : "things:school"));
        }
        const about = [...themes[bookRow], ...themes[row]].map((theme) => columns.themes[theme][0]);
        for (const theme of about) give(number.get(`theme:${theme}`));
        give(number.get(`book:${id}`));
        first.push(has.length);
        const file = files[row];
        ideas.push({
          row, kind, verb, card, of, planned, year, book: bookRow, title: titles[row], minutes: Number(minutes[row]),
          concepts: concepts[row],
          address: file.startsWith("/") ? `${file.slice(1)}.html` : `${folder}/${file}.html`,
          step: card === "step-card" ? (session += 1) : 0,
          cover: card === "book-card" ? `${folder}/${covers[book]}` : "",
        });
      }
    });
    return { columns, values, number, ideas, line, first: Uint32Array.from(first), has: Uint32Array.from(has) };
  };
})();
