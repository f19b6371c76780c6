/* My plan. */
import "../site/plan-count.js";
import "../plan/page.js";
