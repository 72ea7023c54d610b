/** The value of a JSON text; `null` where it is none, such as one that another version left. */
export function jsonValue(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
