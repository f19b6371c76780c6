/* Moves a piece by tap then tap, or by keyboard: choose a piece, then choose its place. Escape lets it go. */
(() => {
  const { say } = window.storymaths;

  window.storymaths.boardPick = (board, state) => {
    let held = null;

    const hold = (piece) => {
      held = piece;
      board.classList.toggle("holding", held !== null);
      for (const button of board.querySelectorAll(".piece")) {
        button.setAttribute("aria-pressed", String(same(button, held)));
      }
      for (const button of board.querySelectorAll(".put")) {
        button.disabled = held === null || (button.dataset.place && !state.fits(held.id, button.dataset.place));
      }
      if (held) say(`${state.pieces.get(held.id).name}: choose a place`);
    };
    const same = (button, piece) => piece !== null && button.dataset.piece === piece.id && button.dataset.from === piece.from;

    board.addEventListener("click", (event) => {
      const piece = event.target.closest(".piece"), put = event.target.closest(".put");
      const place = event.target.closest(".place, .tray");
      if (piece && !(held && held.from !== piece.dataset.from && place && !same(piece, held))) {
        hold(same(piece, held) ? null : { id: piece.dataset.piece, from: piece.dataset.from });
      } else if (held && (put || place)) {
        drop(held, (put ?? place).dataset.place);
      }
    });
    const drop = (piece, to) => {
      const { name } = state.pieces.get(piece.id);
      const moved = state.move(piece.id, piece.from || null, to || null);
      hold(null);
      if (!moved) return;
      say(to ? `${name} to ${state.places.get(to).name}` : `${name} taken back`);
      board.querySelector(`.tray .piece:not([disabled])`)?.focus({ preventScroll: true });
    };
    board.addEventListener("keydown", (event) => {
      if (event.key === "Escape" && held) {
        hold(null);
        event.preventDefault();
        return;
      }
      const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
      if (!step) return;
      const all = [...board.querySelectorAll(held ? ".put" : ".tray .piece")].filter((one) => !one.disabled);
      if (!all.length) return;
      const here = all.indexOf(document.activeElement);
      all[here < 0 ? (step > 0 ? 0 : all.length - 1) : (here + step + all.length) % all.length].focus();
      event.preventDefault();
    });
    return { drop, refresh: () => hold(held) };
  };
})();
