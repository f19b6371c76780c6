/* Looks words up in the text of the pages: in the text index, or, where that cannot run, in every page's questions. */
(() => {
  const { finder, load, root, fromStick } = window.storymaths;
  let index = null, marks = null, questions = null;

  const openIndex = async () => {
    const [pagefind, joined] = await Promise.all([import(new URL("pagefind/pagefind.js", root)), load("text-rows")]);
    await pagefind.options({ excerptLength: 24 });
    await pagefind.init();
    marks = new Map(joined.rows.split(",").map((mark, row) => [mark, { row, story: false }]));
    for (const [mark, row] of Object.entries(joined.stories)) marks.set(mark, { row, story: true });
    return pagefind;
  };

  const inIndex = async (q) => {
    index ??= openIndex();
    const found = new Map();
    const results = (await (await index).search(q))?.results ?? [];
    results.forEach((result, rank) => {
      const where = marks.get(result.id.slice(result.id.lastIndexOf("_") + 1));
      if (where && !found.has(where.row)) {
        found.set(where.row, { rank, story: where.story, excerpt: async () => marked((await result.data()).excerpt) });
      }
    });
    return found;
  };

  /* The index gives its words as HTML with <mark>; both parts are taken as text. */
  const marked = (html) => html.split(/(<mark>.*?<\/mark>)/).filter(Boolean).map((part) => {
    const isMark = part.startsWith("<mark>");
    const page = new DOMParser().parseFromString(`<p>${part.replaceAll(/<\/?mark>/g, "")}</p>`, "text/html");
    return [page.querySelector("p").textContent, isMark];
  });

  const inQuestions = async (q) => {
    questions ??= await load("questions");
    const words = finder.wordsOf(q), found = new Map();
    questions.forEach((text, row) => {
      const lower = ` ${text.toLowerCase()}`;
      if (words.every((word) => finder.standsIn(lower, word))) {
        found.set(row, { rank: found.size, story: false, excerpt: async () => around(text, words) });
      }
    });
    return found;
  };

  /* Some words either side of the first match, with every match marked. */
  const around = (text, words) => {
    const at = Math.max(0, finder.cutAt(text, words).at);
    const from = at < 60 ? 0 : text.lastIndexOf(" ", at - 40) + 1, to = text.indexOf(" ", at + 100);
    return finder.cutAt(text.slice(from, to < 0 ? undefined : to), words).pieces;
  };

  /* Text cut where any of some words begins, each piece with whether it is one of them. */
  finder.cutAt = (text, words) => {
    const any = words.map((word) => word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("|");
    const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(${any})`, "giu");
    return { at: text.search(pattern), pieces: text.split(pattern).map((part, n) => [part, n % 2 === 1]) };
  };

  finder.wordsOf = (q) => q.toLowerCase().split(/\s+/).filter(Boolean);

  /* Whether a word begins somewhere in text that is in small letters. */
  finder.standsIn = (lower, word) => {
    for (let at = lower.indexOf(word); at >= 0; at = lower.indexOf(word, at + 1)) {
      if (at === 0 || !/[\p{L}\p{N}]/u.test(lower[at - 1])) return true;
    }
    return false;
  };

  /* Starts fetching what a first search needs. */
  finder.openText = () => {
    if (!fromStick) (index ??= openIndex()).catch(() => {});
  };

  /* Rows whose page has the words, best first. */
  finder.findText = async (q) => {
    if (fromStick) return inQuestions(q);
    try {
      return await inIndex(q);
    } catch {
      return inQuestions(q);
    }
  };
})();
