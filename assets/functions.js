/*
 * Excel asks for this file because a manifest must name a script for its worksheet functions. It runs
 * the functions in the pane's own runtime instead, from taskpane.html, so there is nothing here.
 */
