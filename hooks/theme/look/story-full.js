/* Lets a story fill the screen, where the browser can. */
(() => {
  const frame = document.querySelector(".story-frame");
  const holder = document.querySelector(".story-more");
  if (!frame || !holder || !document.fullscreenEnabled) return;
  const button = document.createElement("button");
  button.type = "button";
  button.className = "quiet story-full";
  const show = () => {
    button.textContent = document.fullscreenElement ? "Leave full screen" : "Full screen";
  };
  button.addEventListener("click", () => {
    const change = document.fullscreenElement ? document.exitFullscreen() : frame.requestFullscreen();
    change.catch(() => {}); // refused: the page stays as it is
  });
  document.addEventListener("fullscreenchange", show);
  show();
  holder.append(button);
})();
