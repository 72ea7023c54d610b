/** `value` as an explanation shows it: with at most so many decimals, and no zeros at their end. */
export const figureText = (value: number, places: number): string =>
  String(Number(value.toFixed(places)));
