/* Keeps which books a reader owns in the part of the page's address that is sent to no server. */
(() => {
  const NAME = "own";

  window.storymaths.ownedBooks = {
    ids: () => (new URLSearchParams(location.hash.slice(1)).get(NAME) ?? "").split(",").filter(Boolean),
    keep: (ids) => {
      const hash = ids.length ? `#${NAME}=${ids.map(encodeURIComponent).join(",")}` : "";
      history.replaceState(null, "", location.pathname + location.search + hash);
    },
  };
})();
