/** How many there are of something, in words. */

/** `1 opening`, `2 openings`, `1,240 openings`. `several` where an s alone does not make it. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count.toLocaleString("en-US")} ${count === 1 ? one : several}`;
