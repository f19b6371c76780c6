/* Loads a page again when what it shows has changed; under serve alone. Its place is kept, as by any reload. */
const script = /** @type {HTMLScriptElement} */ (document.currentScript);
const asking = new URL(`changed?${new URLSearchParams({ mark: script.dataset.mark ?? "", page: script.dataset.page ?? "" })}`, script.src);

const seen = () => new Promise((resolve) => {
  if (!document.hidden) resolve(null);
  else document.addEventListener("visibilitychange", resolve, { once: true });
});

/** Whether it has changed; the server answers when it has, or after a while. A page that is not seen does not ask. */
const hasChanged = async () => {
  const asked = new AbortController(), leave = () => document.hidden && asked.abort();
  document.addEventListener("visibilitychange", leave);
  try {
    const answer = await fetch(asking, { signal: asked.signal, cache: "no-store" });
    return answer.ok && await answer.text() === "changed";
  } catch {
    await new Promise((resolve) => setTimeout(resolve, 1000)); // the server was stopped, and may be started again
    return false;
  } finally {
    document.removeEventListener("visibilitychange", leave);
  }
};

const watch = async () => {
  await seen();
  if (await hasChanged()) location.reload();
  else watch();
};

watch();
