/* Keeps which books a reader owns in the part of the page's address that is sent to no server. */
const NAME = "own";

export const readOwned = () => (new URLSearchParams(location.hash.slice(1)).get(NAME) ?? "").split(",").filter(Boolean);

/** @type {(ids: string[]) => void} */
export const keepOwned = (ids) => {
  const hash = ids.length ? `#${NAME}=${ids.map(encodeURIComponent).join(",")}` : "";
  history.replaceState(null, "", location.pathname + location.search + hash);
};
