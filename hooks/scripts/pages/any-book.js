/* Something to do with any book. */
import "../site/plan-count.js";
import "../any-book/form.js";
import "../site/plan-line.js";
import "../words/cards.js";
