/* The answers for the books a reader owns, in words: what they cover, what one more would add, the fewest to buy. */
(() => {
  const { root, element, shelf } = window.storymaths;

  const many = (number, one, several = `${one}s`) => `${number} ${number === 1 ? one : several}`;
  const hours = (minutes) => [[Math.floor(minutes / 60), "hour"], [minutes % 60, "minute"]]
    .filter(([number]) => number).map(([number, unit]) => many(number, unit)).join(" ");

  /* Nodes with commas between, and "and" before the last. */
  const listed = (nodes) => nodes.flatMap((node, at) => {
    if (!at) return [node];
    return [at === nodes.length - 1 ? " and " : ", ", node];
  });

  const linked = (address, words, className = "") => {
    const link = element("a", className, words);
    link.href = new URL(address, root);
    return link;
  };

  const part = (heading, ...nodes) => {
    const made = element("div", "shelf-part");
    made.append(element("h3", "", heading), ...nodes);
    return made;
  };

  const sentence = (...nodes) => {
    const made = element("p");
    made.append(...nodes);
    return made;
  };

  const list = (items, className = "lines") => {
    const made = element("ul", className);
    made.append(...items.map((nodes) => {
      const item = element("li");
      item.append(...nodes);
      return item;
    }));
    return made;
  };

  /* The parts of the answer for one question; `books` is every book as `[id, title, address]`, by id. */
  window.storymaths.shelfAnswers = (question, owned, books, caps) => {
    const book = (place) => {
      const [, title, address] = books.get(question.books[place][0]);
      return linked(address, title);
    };
    const objective = (place) => {
      const [code, says, address] = question.objectives[place];
      return [linked(address, code, "code"), ` ${says}.`];
    };
    const inOrder = (places) => [...places].sort((a, b) => a - b);
    const covered = inOrder(shelf.taughtBy(question, owned)), whole = question.objectives.length;

    const have = () => {
      const ours = question.books.filter(([id]) => owned.has(id)).length;
      const all = `${many(whole, "objective")} that some book here teaches.`;
      const told = ours ? `${ours} of your books ${ours === 1 ? "teaches" : "teach"} ${covered.length} of the ${all}`
        : `You own no book yet that teaches any of the ${all}`;
      const fold = element("details");
      fold.append(element("summary", "", "Which they are"), list(covered.map(objective)));
      return part("What you cover", sentence(told), ...(covered.length ? [fold] : []));
    };

    const next = () => {
      const gains = shelf.bestNext(question, owned), [first] = gains;
      if (!first) return part("One more book", sentence("No other book here would add anything."));
      const adds = many(first[1].length, "objective");
      const opening = gains.length === 1 ? `This one would add most, ${adds}:` : `These would add most, ${adds} each:`;
      const items = gains.slice(0, caps.shown).map(([place, objectives]) => [
        book(place), ": ", ...listed(inOrder(objectives).map((one) => linked(question.objectives[one][2], question.objectives[one][0], "code"))),
      ]);
      const rest = gains.length > caps.shown ? [element("p", "note", `The first ${caps.shown} of ${gains.length} are listed.`)] : [];
      return part("One more book", sentence(opening), list(items), ...rest);
    };

    const buy = () => {
      const answer = shelf.shortest(question, owned, caps), count = answer.ways.length;
      if (!answer.books) return part("The fewest to buy", sentence("None: your books teach all that some book here teaches."));
      const told = [`${many(answer.books, "book")}, ${hours(answer.minutes)}, would teach all the rest.`];
      if (answer.more) told.push(` There are more than ${count} ways to choose, each as short as the others.`);
      else if (count > 1) told.push(` There are ${count} ways to choose, each as short as the others.`);
      if (!answer.proved) told.push(" The search was given up before it had seen everything: there may be a shorter shelf.");
      const ways = list(answer.ways.slice(0, caps.shown).map((way) => listed(way.map(book))), "shelf-ways");
      const rest = count > caps.shown ? [element("p", "note", `The first ${caps.shown} are listed.`)] : [];
      return part("The fewest to buy", sentence(...told), ways, ...rest);
    };

    const beyond = () => {
      const page = question.year ? `coverage/year-${question.year}.html` : "coverage/reception.html";
      const told = `No book here teaches ${many(question.beyond, "more objective", "more objectives")} of the year. `;
      return question.beyond ? [sentence(told, linked(page, "See which, and which ideas may help"), ".")] : [];
    };

    return [have(), next(), buy(), ...beyond()];
  };
})();
