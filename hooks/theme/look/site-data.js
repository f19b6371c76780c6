/* Loads a data file of the site once. From a memory stick pages may not fetch, so there its script twin is loaded. */
(() => {
  const storymaths = (window.storymaths ??= {});
  const asked = new Map();
  storymaths.root = new URL("../", document.currentScript.src);
  storymaths.fromStick = location.protocol === "file:";

  const fetched = async (name) => {
    const answer = await fetch(new URL(`${name}.json`, storymaths.root));
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    return answer.json();
  };

  const scripted = (name) => new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = new URL(`${name}.js`, storymaths.root);
    script.onload = () => resolve(window.storymathsData[name]);
    script.onerror = () => reject(new Error(name));
    document.head.append(script);
  });

  storymaths.load = (name) => {
    if (!asked.has(name)) {
      const data = storymaths.fromStick ? scripted(name) : fetched(name);
      asked.set(name, data);
      data.catch(() => asked.delete(name));
    }
    return asked.get(name);
  };

  /* An element with a class and words; words are never read as HTML. */
  storymaths.element = (name, className, text) => {
    const made = document.createElement(name);
    if (className) made.className = className;
    if (text !== undefined) made.textContent = text;
    return made;
  };
})();
