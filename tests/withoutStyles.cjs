/* global CSSStyleSheet */
/**
 * Style rules are left out of the page of jsdom: it has no layout, and each look for a control by its
 * name would ask all of them again, which took two fifths of the time of the pane's tests. What they do is
 * seen by the browser tests.
 */
if (typeof CSSStyleSheet !== "undefined") CSSStyleSheet.prototype.insertRule = () => 0;
