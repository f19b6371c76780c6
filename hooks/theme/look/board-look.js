/* Draws a board from its state: the tray, the places, and what stands in them. */
(() => {
  const { element } = window.storymaths;

  const pieceButton = (piece, from, number) => {
    const made = element("button", "piece");
    made.type = "button";
    Object.assign(made.dataset, { piece: piece.id, from: from ?? "", sort: piece.sort });
    made.setAttribute("aria-pressed", "false");
    if (piece.picture) {
      const picture = element("img");
      picture.src = piece.picture;
      picture.alt = "";
      picture.draggable = false;
      made.append(picture);
    }
    made.append(element("span", "piece-name", piece.name));
    if (piece.shows) made.append(element("span", "piece-shows", piece.shows));
    if (number !== undefined && Number.isFinite(number) && piece.copies > 1) made.append(element("span", "piece-left", `× ${number}`));
    return made;
  };

  const placeBox = (place) => {
    const box = element("div", "place");
    Object.assign(box.dataset, { place: place.id, takes: place.takes, turn: place.turn });
    const put = element("button", "put", place.name);
    put.type = "button";
    put.disabled = true;
    put.dataset.place = place.id;
    box.append(put, element("div", "stands"));
    return box;
  };

  window.storymaths.boardLook = (board, data, state) => {
    if (data.says) board.append(element("p", "board-says child", data.says));
    const tray = element("div", "tray");
    tray.dataset.place = "";
    const back = element("button", "put put-back", "Put it back");
    back.type = "button";
    back.dataset.place = "";
    back.disabled = true;
    const spare = element("div", "stands");
    tray.append(spare, back);
    const field = element("div", `field field-${data.look}`);
    const boxes = data.places.map(placeBox);
    if (data.look === "sentence") {
      boxes.forEach((box, n) => field.append(element("span", "between", data.between[n] ?? ""), box));
      field.append(element("span", "between", data.between[boxes.length] ?? ""));
    } else field.append(...boxes);
    board.append(field, tray);

    return () => {
      spare.replaceChildren(...data.pieces.map((piece) => {
        const made = pieceButton(piece, null, state.left(piece.id));
        made.disabled = state.left(piece.id) < 1 && data.look !== "clock";
        return made;
      }));
      boxes.forEach((box, n) => {
        const standing = state.now[data.places[n].id].map((id) => pieceButton(state.pieces.get(id), data.places[n].id));
        box.querySelector(".stands").replaceChildren(...standing);
        box.classList.toggle("filled", standing.length > 0);
        const names = state.now[data.places[n].id].map((id) => state.pieces.get(id).name);
        box.querySelector(".put").setAttribute("aria-label", `${data.places[n].name}${names.length ? `, holds ${names.join(", ")}` : ""}`);
      });
    };
  };
})();
