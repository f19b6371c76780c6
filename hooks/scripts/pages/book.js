/* The page of a book. */
import "../site/plan-count.js";
import "../words/cards.js";
