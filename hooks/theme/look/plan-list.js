/* Keeps a short list of sessions on this device and nowhere else, and shows beside its link how many there are. */
(() => {
  const { root, element } = window.storymaths;
  const key = `plan of ${root.pathname}`;
  let unkept = []; // when the browser keeps nothing, the list lasts as long as the page

  const ideas = () => {
    try {
      const kept = JSON.parse(localStorage.getItem(key) ?? "[]");
      return Array.isArray(kept) ? kept.filter((name) => typeof name === "string") : [];
    } catch {
      return unkept;
    }
  };

  const keep = (list) => {
    unkept = [...new Set(list)];
    try {
      localStorage.setItem(key, JSON.stringify(unkept));
    } catch { /* private windows may refuse */ }
    document.dispatchEvent(new CustomEvent("plan-changed"));
  };

  window.storymaths.plan = {
    ideas,
    keep,
    has: (name) => ideas().includes(name),
    add: (name) => keep([...ideas(), name]),
    remove: (name) => keep(ideas().filter((other) => other !== name)),
    /* The name a plan keeps a page under: its address from the root, without the ending. */
    nameOf: (address) => {
      const path = decodeURI(new URL(address, root).pathname);
      return path.slice(decodeURI(root.pathname).length).replace(/\.html$/, "");
    },
  };

  const link = document.querySelector('.top nav a[href$="plan.html"]');
  const count = element("span", "plan-count");
  link?.append(" ", count);

  const show = () => {
    const number = ideas().length;
    count.textContent = number ? String(number) : "";
    count.hidden = number === 0;
  };
  document.addEventListener("plan-changed", show);
  addEventListener("storage", (event) => {
    if (event.key === key) document.dispatchEvent(new CustomEvent("plan-changed"));
  });
  addEventListener("pageshow", (event) => {
    if (event.persisted) document.dispatchEvent(new CustomEvent("plan-changed"));
  });
  show();
})();
