/* Draws the hands of a clock where they have been put, and its face. */
(() => {
  const { element } = window.storymaths;

  window.storymaths.boardClock = (board, data, state) => {
    if (data.look !== "clock") return { refresh: () => {} };
    const field = board.querySelector(".field");
    field.classList.add("clock-face");
    for (let hour = 1; hour <= 12; hour += 1) {
      const number = element("span", "clock-number", String(hour));
      number.style.setProperty("--turn", `${hour * 30}deg`);
      field.append(number);
    }
    for (const place of field.querySelectorAll(".place")) place.style.setProperty("--turn", `${place.dataset.turn}deg`);
    const hands = new Map(data.pieces.map((piece) => {
      const hand = element("span", `hand ${piece.id}`);
      hand.hidden = true;
      field.append(hand);
      return [piece.id, hand];
    }));
    const refresh = () => {
      for (const [id, hand] of hands) {
        const at = state.whereIs(id);
        hand.hidden = at === null;
        if (at !== null) hand.style.setProperty("--turn", `${state.places.get(at).turn}deg`);
      }
    };
    return { refresh };
  };
})();
