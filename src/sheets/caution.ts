/** The caution that every printed list and the pane carry. */
export const caution =
  "A hanging door can fall and crush. Follow the supplier's instructions and local codes. " +
  "Doors on a way out, fire doors, loads and anchors belong to a licensed person.";
