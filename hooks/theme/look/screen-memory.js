/* What a class screen remembers on this device: where the class is, what it has tried. Nothing leaves the device. */
(() => {
  const { root } = window.storymaths;
  const screen = document.querySelector("[data-screen]");
  if (!screen) return;
  const key = `class screen ${screen.dataset.name} of ${root.pathname}`;
  let kept = {};
  try {
    const read = JSON.parse(localStorage.getItem(key) ?? "{}");
    if (read && typeof read === "object" && !Array.isArray(read)) kept = read;
  } catch { /* unreadable or refused: it begins afresh */ }

  const write = () => {
    try {
      if (Object.keys(kept).length) localStorage.setItem(key, JSON.stringify(kept));
      else localStorage.removeItem(key);
    } catch { /* private windows may refuse: then it lasts as long as the page */ }
  };

  window.storymaths.memory = {
    get: (name) => kept[name],
    set: (name, value) => { kept[name] = value; write(); },
    clear: () => { kept = {}; write(); },
  };
})();
