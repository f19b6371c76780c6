/* The shortest shelf. */
import "../site/plan-count.js";
import "../shelf/page.js";
