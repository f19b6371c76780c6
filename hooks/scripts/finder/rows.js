/* Unpacks the finder’s columns into plain arrays: what each idea is, and which values of which facets it has, by number. */

/**
 * @typedef {"book-card" | "step-card" | "home-card" | "text-card"} Card with a cover, a number, a roof, or words alone
 * @typedef {[letter: string, key: string, words: string, verb: string, card: Card, of: string, planned: 0 | 1]} Kind
 *   of page: `of` leads over to the title of its book, `verb` to its concepts; `planned` if a plan takes it
 * @typedef {{
 *   over: string, minutes: string, meanings: [says: string, values: string, nearest?: string][], pages: Record<string, string>,
 * }} AskedWords what is fetched when words are asked for
 * @typedef {{
 *   strands: [id: string, name: string][],
 *   concepts: [id: string, name: string, strand: number, under: number][],
 *   themes: [id: string, name: string][],
 *   asked?: AskedWords,
 *   kinds: Kind[],
 *   years: string[],
 *   books: { id: string, cover: string, folder: Record<number, string> },
 *   rows: {
 *     book: number[], kind: string, file: string, title: string, year: string, also: string, minutes: string,
 *     concepts: string, themes: string, things: string,
 *   },
 * }} Columns what is fetched: as hooks/storymaths/publish/finder_columns.py makes it
 * @typedef {{
 *   number: number, facet: number, name: string, key: string, words: string,
 *   bend?: number, strand?: number, depth?: number, whole?: boolean,
 * }} Value of a facet, which `name` names
 * @typedef {{
 *   row: number, verb: string, card: Card, of: string, planned: boolean, year: number, book: number, title: string, minutes: number, concepts: number[],
 *   address: string, step: number, cover: string,
 * }} Idea `book` is the row of its book, its own where it has none; `year` is -1 for none
 * @typedef {{
 *   columns: Columns, asked: AskedWords, values: Value[], number: Map<string, number>, ideas: Idea[], line: number[][],
 *   first: Uint32Array, has: Uint32Array, spanOf: (minutes: number) => number,
 * }} Data `spanOf` gives the value of so many minutes; `number` finds a value by facet and key; `has` lists the values of row after row, those of one from `first`
 */

/** @type {[key: string, words: string][]} */
export const FACETS = [
  ["year", "Year"], ["concept", "Concept"], ["kind", "Kind"], ["minutes", "Minutes"], ["print", "Printing"],
  ["things", "Things needed"], ["theme", "Theme"], ["book", "Book"],
];
/** @type {[most: number, words: string][]} */
const SPANS = [[15, "up to 15"], [30, "16 to 30"], [45, "31 to 45"], [60, "46 to 60"], [Infinity, "more than 60"]];

/** @type {(minutes: number) => number} */
const spanOf = (minutes) => SPANS.findIndex(([most]) => minutes <= most);

/** Every value of every facet, in the order shown. @param {Columns} columns */
const readValues = (columns) => {
  /** @type {Value[]} */
  const values = [];
  /** @type {Map<string, number>} */
  const number = new Map();
  /** @type {(name: string, key: string | number, words: string, more?: Partial<Value>) => void} */
  const add = (name, key, words, more = {}) => {
    number.set(`${name}:${key}`, values.length);
    const facet = FACETS.findIndex(([other]) => other === name);
    values.push({ number: values.length, facet, name, key: String(key), words, ...more });
  };
  columns.years.forEach((words, year) => {
    add("year", year, words);
    add("year", `b${year}`, `can be taught to ${words}`, { bend: year });
  });
  /** @type {(strand: number, wider: number, depth: number) => void} */
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

/** @type {(text: string) => number[]} */
const numbers = (text) => (text === "" ? [] : text.split(" ").map(Number));

/**
 * The values each concept brings with it: itself, the wider ones it is part of, and its strand.
 * @type {(columns: Columns, numberOf: (name: string, key: string | number) => number) => number[][]}
 */
const lineage = (columns, numberOf) => columns.concepts.map(([key, , strand, under]) => {
  const line = [numberOf("concept", key)];
  for (let wider = under; wider >= 0; wider = columns.concepts[wider][3]) {
    line.push(numberOf("concept", columns.concepts[wider][0]));
  }
  return [...line, numberOf("concept", `strand-${columns.strands[strand][0]}`)];
});

/** @type {(columns: Columns) => Data} */
export const read = (columns) => {
  const { values, number, add } = readValues(columns);
  /** @type {(name: string, key: string | number) => number} */
  const numberOf = (name, key) => /** @type {number} */ (number.get(`${name}:${key}`));
  /** @type {(minutes: number) => number} */
  const spanNumber = (minutes) => numberOf("minutes", SPANS[0][0]) + spanOf(minutes);
  const { rows, books } = columns;
  const titles = rows.title.split("\n"), files = rows.file.split("\n"), minutes = rows.minutes.split(",");
  const concepts = rows.concepts.split(",").map(numbers), themes = rows.themes.split(",").map(numbers);
  const line = lineage(columns, numberOf);
  const bookIds = books.id ? books.id.split("\n") : [], covers = books.cover.split("\n");
  /** @type {Idea[]} */
  const ideas = [];
  const first = [0], has = /** @type {number[]} */ ([]), seen = /** @type {number[]} */ ([]);
  let row = 0;
  rows.book.forEach((_, book) => {
    const id = bookIds[book], folder = books.folder[book] ?? `books/${id}`, bookRow = row;
    let session = 0;
    if (id !== undefined) add("book", id, titles[bookRow]);
    for (const last = row + rows.book[book]; row < last; row += 1) {
      const own = columns.kinds.find(([letter]) => letter === rows.kind[row]) ?? columns.kinds[0];
      const [, kind, , verb, card, of, planned] = own;
      /** @type {(value: number) => void} */
      const give = (value) => {
        if (seen[value] !== row) { seen[value] = row; has.push(value); }
      };
      const year = rows.year[row] === "-" ? -1 : Number(rows.year[row]);
      const also = Number.parseInt(rows.also.slice(row * 2, row * 2 + 2), 16);
      if (year >= 0) give(numberOf("year", year));
      for (let bend = 0; bend < 7; bend += 1) if (also >> bend & 1) give(numberOf("year", `b${bend}`));
      for (const concept of concepts[row]) line[concept].forEach(give);
      give(numberOf("kind", kind));
      const things = rows.things[row];
      if (minutes[row]) give(spanNumber(Number(minutes[row])));
      if (things !== "-") {
        give(numberOf("print", Number(things) & 1 ? "nothing" : "something"));
        give(numberOf("things", Number(things) & 2 ? "kitchen" : "school"));
      }
      for (const theme of [...(id === undefined ? [] : themes[bookRow]), ...themes[row]]) give(numberOf("theme", columns.themes[theme][0]));
      if (id !== undefined) give(numberOf("book", id));
      first.push(has.length);
      const file = files[row];
      if (card === "step-card") session += 1;
      ideas.push({
        row, verb, card, of, planned: planned === 1, year, book: id === undefined ? row : bookRow, title: titles[row],
        minutes: Number(minutes[row]), concepts: concepts[row],
        address: file.startsWith("/") ? `${file.slice(1)}.html` : `${folder}/${file}.html`,
        step: card === "step-card" ? session : 0,
        cover: card === "book-card" ? `${folder}/${covers[book]}` : "",
      });
    }
  });
  const asked = columns.asked ?? { over: "", minutes: "minutes", meanings: [], pages: {} };
  return { columns, asked, values, number, ideas, line, first: Uint32Array.from(first), has: Uint32Array.from(has), spanOf: spanNumber };
};
