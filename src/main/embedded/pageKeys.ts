/** What can be done by keyboard: the keys, and what they do. */
export const pageKeys: readonly (readonly [keys: string, does: string])[] = [
  ["F6", "Goes from the spreadsheet to the pane, to the bar, and round; Shift+F6 the other way."],
  ["Tab", "The next cell; in the pane and the bar the next control."],
  ["Arrow keys", "From cell to cell; on the pane’s tabs from view to view."],
  [
    "Enter",
    "Takes what is typed. On a cell’s name in the pane: goes there, to type; F6 comes back.",
  ],
  ["F2", "Types on in a cell."],
  ["Esc", "Leaves a cell as it was; in the pane, goes back."],
  ["Alt+↓", "Opens the list of a cell: arrow keys and letters choose, Enter takes."],
  ["Home, Ctrl+Home", "The first cell of the row, of the sheet."],
  ["Ctrl+End", "The last cell that holds anything."],
  ["Ctrl+arrow", "To the end of what is filled in."],
  ["Page up, down", "A page of rows."],
  ["Ctrl+Alt+Page up, down", "The sheet before, the sheet behind."],
  ["Shift+F11", "Adds a sheet."],
  ["Ctrl+plus, minus, 0", "The cells larger, smaller, at full size."],
  ["Ctrl+Z, Ctrl+Y", "Takes back, does again."],
  ["Ctrl+S", "Saves .xlsx."],
];
