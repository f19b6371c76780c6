/* Tilts a beam by what is really on it. The sums show only while the adult's notes do. */
(() => {
  const { element } = window.storymaths;
  const most = 9;

  window.storymaths.boardBeam = (board, data, state) => {
    if (data.look !== "beam") return { refresh: () => {}, words: null };
    const screen = board.closest("[data-screen]"), field = board.querySelector(".field");
    const beam = element("div", "beam");
    beam.setAttribute("role", "img");
    field.prepend(beam);
    const sums = element("p", "sums");
    sums.hidden = true;
    field.append(sums);
    screen.addEventListener("notes-turned", (event) => { sums.hidden = !event.detail; });
    const worth = (place) => state.now[place].reduce((sum, id) => sum + state.pieces.get(id).worth, 0);

    const refresh = () => {
      const [left, right] = data.places.map((place) => worth(place.id));
      const lean = left === right ? 0 : Math.max(-most, Math.min(most, (right - left) / Math.max(left, right) * most || 0));
      const tilt = left === right ? 0 : Math.sign(right - left) * Math.max(3, Math.abs(lean));
      field.style.setProperty("--tilt", `${tilt}deg`);
      field.dataset.tilt = Math.sign(right - left);
      beam.setAttribute("aria-label", left === right ? "The beam is level." : `The ${left > right ? "left" : "right"} side is down.`);
      sums.textContent = `${left} and ${right}`;
    };
    /* A try as a number sentence. */
    const words = () => {
      const side = (place) => state.now[place.id].map((id) => state.pieces.get(id).worth).join(" + ") || "0";
      const names = (place) => state.now[place.id].map((id) => state.pieces.get(id).name).join(", ") || "nobody";
      const [left, right] = data.places;
      return `${side(left)} ${worth(left.id) === worth(right.id) ? "=" : "≠"} ${side(right)} (${names(left)}; ${names(right)})`;
    };
    return { refresh, words };
  };
})();
