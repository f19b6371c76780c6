/* The page of a series. */
import "../site/plan-count.js";
import "../weeks/page.js";
