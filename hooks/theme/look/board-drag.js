/* Moves a piece by dragging it, with a mouse, a pen or a finger. */
(() => {
  const far = 8;

  window.storymaths.boardDrag = (board, drop) => {
    let drag = null;

    board.addEventListener("pointerdown", (event) => {
      const piece = event.target.closest(".piece");
      if (!piece || piece.disabled || event.button !== 0) return;
      drag = { piece, x: event.clientX, y: event.clientY, shade: null, pointer: event.pointerId };
    });
    addEventListener("pointermove", (event) => {
      if (!drag || event.pointerId !== drag.pointer) return;
      const across = event.clientX - drag.x, along = event.clientY - drag.y;
      if (!drag.shade && Math.hypot(across, along) < far) return;
      drag.shade ??= lift(drag.piece);
      drag.shade.style.translate = `${event.clientX}px ${event.clientY}px`;
      for (const place of board.querySelectorAll(".over")) place.classList.remove("over");
      under(event, drag.piece.dataset.sort)?.classList.add("over");
    });
    const end = (event) => {
      if (!drag || event.pointerId !== drag.pointer) return;
      const { piece, shade } = drag;
      drag = null;
      for (const place of board.querySelectorAll(".over")) place.classList.remove("over");
      if (!shade) return;
      shade.remove();
      piece.classList.remove("lifted");
      // The click that follows a drag is not a choice.
      addEventListener("click", stop, { capture: true, once: true });
      setTimeout(() => removeEventListener("click", stop, { capture: true }), 0);
      const place = event.type === "pointerup" ? under(event, piece.dataset.sort) : null;
      if (place) drop({ id: piece.dataset.piece, from: piece.dataset.from }, place.dataset.place);
    };
    addEventListener("pointerup", end);
    addEventListener("pointercancel", end);
    const stop = (event) => { event.stopPropagation(); event.preventDefault(); };

    const lift = (piece) => {
      const shade = piece.cloneNode(true);
      shade.classList.add("in-hand");
      shade.setAttribute("aria-hidden", "true");
      shade.tabIndex = -1;
      piece.classList.add("lifted");
      board.append(shade);
      return shade;
    };
    /* The place below the pointer; on a clock, where places are small, the nearest that takes the piece. */
    const under = (event, sort) => {
      const clock = board.querySelector(".clock-face");
      if (!clock) {
        return document.elementsFromPoint(event.clientX, event.clientY).map((one) => one.closest(".place, .tray"))
          .find((one) => one && board.contains(one)); // a place of another board is none of this one's
      }
      const face = clock.getBoundingClientRect();
      const x = event.clientX - (face.x + face.width / 2), y = event.clientY - (face.y + face.height / 2);
      if (Math.hypot(x, y) > face.width * 0.62) return null;
      const turn = (Math.atan2(x, -y) * 180 / Math.PI + 360) % 360;
      const away = (place) => { const gap = Math.abs(Number(place.dataset.turn) - turn); return Math.min(gap, 360 - gap); };
      return [...clock.querySelectorAll(".place")].filter((place) => place.dataset.takes === sort).sort((a, b) => away(a) - away(b))[0];
    };
  };
})();
