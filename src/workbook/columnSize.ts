/**
 * How wide a column is, and how high a row. Spreadsheets say widths in characters: a digit of their
 * usual font has 7 pixels and 5 are padding, and a pixel is three quarters of a point (ECMA-376 Part 1,
 * 18.3.1.13, for the first; both hold at 96 pixels to the inch).
 */
export const columnPixels = (characters: number): number => characters * 7 + 5;

export const columnPoints = (characters: number): number => columnPixels(characters) * 0.75;

/** The characters that make a column of so many points; never fewer than none. */
export const columnCharacters = (points: number): number => Math.max(0, (points / 0.75 - 5) / 7);

/** No row is higher; points. (Source: Microsoft's page on Excel specifications and limits.) */
const highestRow = 409;

/** The height that a row can have of the one that is wanted; points. */
export const rowPoints = (wanted: number): number => Math.min(wanted, highestRow);
