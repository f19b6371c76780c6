/* Makes the browser's own Back and Forward turn slides. */

/** @typedef {{ keep: (slide: number, further: boolean) => void }} Past `keep` notes a slide that was turned to, and whether it lies ahead */

/** The slide of a page that is loaded again; null for one that is opened. @type {() => number | null} */
export const slideBefore = () => (typeof history.state?.slide === "number" ? history.state.slide : null);

/**
 * `now` is the slide that is shown, `before` are those a class has come past: Back turns through them too.
 * `show` shows the nearest to a slide, so many slides on at least, and says whether that is another.
 * @type {(now: () => number, before: number[], show: (slide: number, by: number) => boolean) => Past}
 */
export const openPast = (now, before, show) => {
  let depth = Number(history.state?.depth) || 0;
  /** @type {Past["keep"]} */
  const keep = (slide, further) => {
    if (further) depth += 1;
    if (further) history.pushState({ slide, depth }, "");
    else history.replaceState({ slide, depth }, "");
  };
  addEventListener("popstate", () => {
    const there = Number(history.state?.depth) || 0, by = Math.sign(there - depth);
    depth = there;
    if (by && show(slideBefore() ?? now(), by)) keep(now(), false);
    else if (by < 0) history.back(); // from the first slide it leads out, whatever was turned through before
  });
  if (slideBefore() === null) [...before, now()].forEach((slide, n) => keep(slide, n > 0));
  return { keep };
};
