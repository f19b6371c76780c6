/* Puts a board together: what a class does on it, what it has tried, and how many of the answers it has found. */
(() => {
  const { boardBeam, boardClock, boardDrag, boardLook, boardPick, boardState, element, say, screenBar } = window.storymaths;
  if (!screenBar) return;

  const button = (words, act) => {
    const made = screenBar.button(words, "quiet", act);
    return made;
  };
  /* What stands where, in words. */
  const told = (data, state) => {
    const named = (place) => state.now[place.id].map((id) => state.pieces.get(id).name).join(", ") || "…";
    if (data.look === "sentence") return data.between.map((words, n) => words + (data.places[n] ? named(data.places[n]) : "")).join("");
    const filled = data.places.filter((place) => state.now[place.id].length);
    if (data.look === "clock") return filled.map((place) => place.name).join(", ");
    if (data.look === "slots") return filled.map(named).join("; ");
    return filled.map((place) => `${place.name}: ${counted(state, place)}`).join("; ");
  };
  const counted = (state, place) => {
    const names = state.now[place.id].map((id) => state.pieces.get(id).name);
    return new Set(names).size === 1 && names.length > 1 ? `${names.length} ${names[0]}` : names.join(", ");
  };

  const play = (board, number) => {
    const data = JSON.parse(board.querySelector("script").textContent);
    const state = boardState(data, `board ${number}`);
    const many = new Set(Object.values(data.answers)).size;
    const draw = boardLook(board, data, state);
    const beam = boardBeam(board, data, state), clock = boardClock(board, data, state);
    const pick = boardPick(board, state);
    boardDrag(board, pick.drop);

    const actions = element("div", "board-actions");
    const look = button("Look together", () => {
      const words = beam.words ? beam.words() : told(data, state);
      const answer = data.answers[state.key()] ?? null;
      const again = answer !== null && state.tries.some((one) => one.answer === answer);
      state.record(words, answer);
      verdict.textContent = answer === null ? "Not this time. What do you notice?" : again ? "Yes, and we have it already." : "Yes, that is one.";
      if (many === 1 && answer !== null) verdict.textContent = "Yes.";
      say(`${words}. ${verdict.textContent}`);
    });
    const back = button("Take one back", () => { state.takeBack(); say("Taken back"); });
    const again = button("Start again", () => { state.startAgain(); say("All put back"); });
    const verdict = element("p", "verdict");
    actions.append(look, back, again, verdict);
    const tries = element("ol", "tries");
    tries.setAttribute("aria-label", "What we have tried");
    const found = element("p", "found");
    board.append(actions, found, tries);

    const refresh = () => {
      draw();
      beam.refresh();
      clock.refresh();
      pick.refresh();
      back.disabled = !state.canTakeBack();
      look.disabled = again.disabled = Object.values(state.now).flat().length === 0;
      found.textContent = state.found() ? `Found: ${state.found()}` : "";
      tries.replaceChildren(...state.tries.map((one) => element("li", one.answer === null ? "" : "right", one.words)));
    };
    state.onChange(() => { verdict.textContent = ""; refresh(); });
    refresh();
  };
  document.querySelectorAll("[data-board]").forEach(play);
})();
