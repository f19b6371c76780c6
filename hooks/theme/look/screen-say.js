/* Says what has changed to those who cannot see it, one thing at a time. */
(() => {
  const { element } = window.storymaths;
  const region = element("p", "only-heard");
  region.setAttribute("aria-live", "polite");
  document.querySelector("[data-screen]")?.append(region);
  window.storymaths.say = (words) => { region.textContent = words; };
})();
