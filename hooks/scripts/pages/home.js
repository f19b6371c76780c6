/* The page of a home activity. */
import "../site/plan-count.js";
import "../site/plan-line.js";
import "../words/cards.js";
