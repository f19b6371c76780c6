/* A page whose kind has no scripts of its own. */
import "../site/plan-count.js";
