/** How large a formula may be: far beyond any that a person can check by eye. */
export const formulaLimits = {
  /** Characters of its text. */
  characters: 4000,
  /** Brackets, functions and signs inside one another. */
  depth: 64,
  /** Numbers, names, texts, operators and functions. */
  parts: 1000,
  /** Characters of a text that it makes: what a spreadsheet's cell holds. */
  textResult: 32767,
} as const;
