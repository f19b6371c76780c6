/* The page of a session. */
import "../site/plan-count.js";
import "../site/plan-line.js";
import "../words/cards.js";
import "../session/quantities.js";
