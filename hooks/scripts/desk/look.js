/* The page as it will look, beside the form: loaded anew when the page has changed, and left where it was. */
import { all, part } from "../site/find.js";
import { about, drawn, read } from "./send.js";

export class Look {
  /** @param {string} source */
  constructor(source) {
    this.source = source;
    this.frame = part(document, "#look", HTMLIFrameElement);
    this.sheets = part(document, "#sheets", HTMLElement);
    this.address = this.frame.dataset.first ?? "";
    this.top = 0;
    this.frame.addEventListener("load", () => this.frame.contentWindow?.scrollTo(0, this.top));
    all(document, "[data-look]", HTMLButtonElement).forEach((one) => one.addEventListener("click", () => this.choose(one)));
    const more = part(document, "#show-sheets", HTMLButtonElement);
    more.addEventListener("click", () => void this.showSheets(more));
  }

  /** @param {HTMLButtonElement} chosen */
  choose(chosen) {
    all(document, "[data-look]", HTMLButtonElement).forEach((one) => one.setAttribute("aria-pressed", String(one === chosen)));
    this.address = chosen.dataset.look ?? "";
    this.top = 0;
    part(document, "#look-alone", HTMLAnchorElement).href = this.address;
    this.frame.contentWindow?.location.replace(this.address);
  }

  renew() {
    const shown = this.frame.contentWindow;
    if (!shown) return;
    this.top = shown.scrollY;
    if (shown.location.pathname === this.address) shown.location.reload();
    else shown.location.replace(this.address);
  }

  /** @param {HTMLButtonElement} more */
  async showSheets(more) {
    const open = more.getAttribute("aria-expanded") === "true";
    more.setAttribute("aria-expanded", String(!open));
    this.sheets.hidden = open;
    if (open) return;
    this.sheets.textContent = "Setting the sheets …";
    this.sheets.replaceChildren(drawn(await read(about("/sheets", this.source))));
  }
}
