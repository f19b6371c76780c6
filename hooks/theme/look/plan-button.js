/* Puts a session or home activity into the plan, or takes it out: on its own page, and on the finder's cards. */
(() => {
  const { plan, element } = window.storymaths;

  /* A button for the page of that name; with a `title` it can be told apart from others in a list when heard. */
  window.storymaths.planButton = (name, title) => {
    const button = element("button", "quiet plan-button");
    button.type = "button";
    button.planName = name;
    button.showPlan = () => {
      const inside = plan.has(name);
      button.textContent = inside ? "Take out of my plan" : "Add to my plan";
      if (title) button.setAttribute("aria-label", `${button.textContent}: ${title}`);
      button.classList.toggle("in-plan", inside);
    };
    button.addEventListener("click", () => (plan.has(name) ? plan.remove(name) : plan.add(name)));
    button.showPlan();
    return button;
  };

  document.addEventListener("plan-changed", () => {
    for (const button of document.querySelectorAll(".plan-button")) button.showPlan?.();
  });

  if (!document.body.matches(".kind-session, .kind-home")) return;
  const place = document.querySelector(".masthead > div") ?? document.querySelector("main header");
  if (!place) return;
  const line = element("p", "plan-line");
  const said = element("span", "plan-said");
  said.setAttribute("role", "status");
  const button = window.storymaths.planButton(plan.nameOf(location.href));
  button.addEventListener("click", () => {
    const number = plan.ideas().length;
    said.replaceChildren();
    if (!plan.has(button.planName)) {
      said.textContent = "Taken out.";
      return;
    }
    const link = element("a", "", number === 1 ? "My plan has 1 idea" : `My plan has ${number} ideas`);
    link.href = new URL("plan.html", window.storymaths.root);
    said.append("Added. ", link);
  });
  line.append(button, said);
  place.append(line);
})();
