/**
 * Formulas as files spell them: functions newer than the format carry a prefix there, so do the
 * names that LET and LAMBDA define, and functions of an add-in are written as one word.
 */

const quotedText = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

/** Applies `change` to all of `formula` but what stands in quotes. */
const outsideQuotes = (formula: string, change: (part: string) => string): string =>
  formula
    .split(quotedText)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join("");

/** As a person types it, `=` in front: `_xlfn.IFS(A1,_xldudf_CRIB_PLATE(7,7))` is `=IFS(A1,CRIB.PLATE(7,7))`. */
export const formulaFromFile = (text: string): string =>
  `=${outsideQuotes(text, (part) =>
    part
      .replace(/_xl(?:fn|ws|pm|udf)\./gi, "")
      .replace(/_xldudf_([A-Z0-9]+)_/gi, "$1.")
      // An array reference to a whole spill is written as a function.
      .replace(/ANCHORARRAY\(([^()]*)\)/gi, "$1#")
      .replace(/SINGLE\(([^()]*)\)/gi, "@$1"),
  )}`;

/** The text that a file holds for a formula that starts with `=`. */
export function formulaForFile(formula: string): string {
  const own = definedInside(formula);
  return outsideQuotes(formula.replace(/^=/, ""), (part) =>
    part
      .replace(/([\p{L}_][\p{L}\p{N}_.]*)(\s*\()/gu, (whole, name: string, bracket: string) => {
        const plain = name.toUpperCase();
        if (worksheetFunctions.has(plain)) return `_xlfn._xlws.${name}${bracket}`;
        if (newFunctions.has(plain)) return `_xlfn.${name}${bracket}`;
        return whole;
      })
      .replace(/\bCRIB\.(?=[A-Z])/gi, "_xldudf_CRIB_")
      .replace(/([\p{L}_][\p{L}\p{N}_]*)(?![\p{L}\p{N}_.(!])/gu, (name) =>
        own.has(name.toLowerCase()) ? `_xlpm.${name}` : name,
      ),
  );
}

/** The names that LET and LAMBDA define, in lower case. */
function definedInside(formula: string): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { index, 0: start } of formula.matchAll(/\b(LET|LAMBDA)\(/gi)) {
    const parts = argumentsAt(formula, index + start.length);
    const isLet = /^let/i.test(start);
    for (const [place, part] of parts.slice(0, -1).entries()) {
      const name = part.trim();
      if ((!isLet || place % 2 === 0) && /^[\p{L}_][\p{L}\p{N}_]*$/u.test(name)) {
        names.add(name.toLowerCase());
      }
    }
  }
  return names;
}

/** The arguments of the call whose bracket opens just before `start`. */
function argumentsAt(formula: string, start: number): string[] {
  const parts: string[] = [];
  let part = "";
  let depth = 0;
  for (const piece of formula.slice(start).split(/("(?:[^"]|"")*"|'(?:[^']|'')*'|[(){},])/)) {
    if (piece === ")" || piece === "}") depth -= 1;
    if (depth < 0) break;
    if (piece === "(" || piece === "{") depth += 1;
    if (piece === "," && depth === 0) {
      parts.push(part);
      part = "";
    } else part += piece;
  }
  return [...parts, part];
}

const words = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/));

/** Functions that came after the format. (Source: Microsoft's help page on the `_xlfn.` prefix; list from memory.) */
const newFunctions = words(`
  ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE
  BINOM.INV BITAND BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH CEILING.PRECISE
  CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT
  CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH DAYS DECIMAL DROP
  ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FIELDVALUE
  FLOOR.MATH FLOOR.PRECISE FORECAST.ETS FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV
  GAMMALN.PRECISE GAUSS HSTACK HYPGEOM.DIST IFNA IFS IMCOSH IMCOT IMCSC IMCSCH IMSEC IMSECH IMSINH
  IMTAN ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST LOGNORM.INV MAKEARRAY MAP
  MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV
  NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC
  PERCENTRANK.INC PERMUTATIONA PHI POISSON.DIST QUARTILE.EXC QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ
  REDUCE RRI SCAN SEC SECH SEQUENCE SHEET SHEETS SKEW.P SORTBY STDEV.P STDEV.S SWITCH T.DIST
  T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW
  UNICHAR UNICODE UNIQUE VALUETOTEXT VAR.P VAR.S VSTACK WEIBULL.DIST WRAPCOLS WRAPROWS
  XLOOKUP XMATCH XOR Z.TEST
`);

const worksheetFunctions = words("FILTER SORT");
