/* Says early that scripts run, so that what needs them can be laid out before it is filled. */
document.documentElement.classList.add("scripted");
