/* The finder. */
import "../site/plan-count.js";
import "../finder/page.js";
