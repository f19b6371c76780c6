/* Keeps which books a reader owns on this device and nowhere else. */
(() => {
  const { root } = window.storymaths;
  const key = `books owned of ${root.pathname}`;
  let unkept = []; // when the browser keeps nothing, the ticks last as long as the page

  window.storymaths.ownedBooks = {
    ids: () => {
      try {
        const kept = JSON.parse(localStorage.getItem(key) ?? "[]");
        return Array.isArray(kept) ? kept.filter((id) => typeof id === "string") : [];
      } catch {
        return unkept;
      }
    },
    keep: (ids) => {
      unkept = [...new Set(ids)];
      try {
        if (unkept.length) localStorage.setItem(key, JSON.stringify(unkept));
        else localStorage.removeItem(key);
      } catch { /* private windows may refuse */ }
    },
  };
})();
