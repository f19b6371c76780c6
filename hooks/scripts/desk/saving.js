/* Saves a page change by change: in order, each made to the page as the last one left it. */
import { part } from "../site/find.js";
import { NotTaken, post } from "./send.js";

const AGAIN_AFTER = 3000;

/**
 * @typedef {import("./send.js").Asked} Asked
 * @typedef {import("./send.js").Saved} Saved
 * @typedef {import("./send.js").Refused} Refused
 */

/** The page that is open, as its file was last known. */
export class Saving {
  /**
   * @param {HTMLElement} page
   * @param {{ saved: (saved: Saved, asked: Asked) => void, refused: (why: string, asked: Asked) => void, changedOutside: (refused: Refused, asked: Asked, address: string) => void }} tell
   */
  constructor(page, tell) {
    this.source = page.dataset.source ?? "";
    this.mark = page.dataset.mark ?? "";
    this.tell = tell;
    /** @type {{ address: string, asked: Asked }[]} */
    this.waiting = [];
    this.busy = false;
    this.told = part(document, "#told", HTMLElement);
    window.addEventListener("beforeunload", (event) => { if (this.waiting.length) event.preventDefault(); });
  }

  /** @param {string} address @param {Asked} asked */
  send(address, asked) {
    this.waiting.push({ address, asked });
    void this.go();
  }

  /** Lets go of what waits, when the page is another. */
  forget() {
    this.waiting = [];
  }

  async go() {
    if (this.busy) return;
    this.busy = true;
    while (this.waiting.length) {
      const { address, asked } = this.waiting[0];
      this.told.textContent = "Saving …";
      try {
        const saved = await post(address, { ...asked, source: this.source, before: this.mark });
        this.waiting.shift();
        this.mark = saved.mark;
        this.tell.saved(saved, asked);
        this.told.textContent = `Saved at ${new Date().toLocaleTimeString("en-GB")}`;
      } catch (error) {
        if (!(error instanceof NotTaken)) {
          this.told.textContent = "Not saved yet: the desk does not answer. What you typed stays here and is tried again.";
          setTimeout(() => void this.go(), AGAIN_AFTER);
          break;
        }
        this.waiting.shift();
        this.told.textContent = "Not saved";
        if (error.status === 409) {
          this.waiting = [];
          this.tell.changedOutside(error.refused, asked, address);
        } else {
          this.tell.refused(error.refused.refused, asked);
        }
      }
    }
    this.busy = false;
  }
}
