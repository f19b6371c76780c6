/* The authors' guide. */
import "../site/plan-count.js";
import "../guide/names.js";
