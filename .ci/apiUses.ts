/** Every member of the Excel API that code uses, with the requirement set that it came with. */
import ts from "typescript";
import { later, setsKnownAt, type Sets } from "./apiGuards";

export type ApiUse = {
  /** Such as `Table.resize`. */
  readonly member: string;
  readonly set: string;
  readonly version: string;
  readonly file: string;
  readonly line: number;
  /** What the code asked for before it. */
  readonly known: Sets;
};

export type ApiUses = {
  readonly uses: readonly ApiUse[];
  /** What can't be checked, or names a member that is not there. */
  readonly faults: readonly string[];
};

/** Collects the uses in `files` of the program. */
export function apiUses(program: ts.Program, files: readonly ts.SourceFile[]): ApiUses {
  const checker = program.getTypeChecker();
  const uses: ApiUse[] = [];
  const faults: string[] = [];

  const note = (symbol: ts.Symbol | undefined, node: ts.Node): void => {
    const declarations = symbol?.declarations ?? [];
    noteDeclarations(declarations, node);
  };
  const noteDeclarations = (declarations: readonly ts.Node[], node: ts.Node): void => {
    const known = declarations.filter(isExcels).flatMap((declaration) => {
      const since = introducedIn(declaration);
      return since === null ? [] : [{ ...since, declaration }];
    });
    // Of several overloads the oldest counts; which one is called, the checker may not know.
    const [oldest] = known.sort((one, other) => later(one.version, other.version));
    if (oldest === undefined) return;
    uses.push({
      member: memberName(oldest.declaration),
      set: oldest.set,
      version: oldest.version,
      ...placeOf(node),
      known: setsKnownAt(node, checker),
    });
  };

  /** `load("items/name, format/fill/color")`: what the text names is used too. */
  const noteLoad = (call: ts.CallExpression): void => {
    if (!ts.isPropertyAccessExpression(call.expression)) return;
    if (call.expression.name.text !== "load") return;
    const loaded = checker.getTypeAtLocation(call.expression.expression);
    if (!isExcelType(loaded)) return;
    for (const argument of call.arguments.flatMap(listItems)) {
      if (!ts.isStringLiteralLike(argument)) {
        if (!ts.isObjectLiteralExpression(argument)) {
          faults.push(`${placeText(argument)}: load() of what is no plain text can't be checked`);
        }
        continue;
      }
      for (const path of argument.text.split(",")) notePath(loaded, path.trim(), argument);
    }
  };
  const notePath = (start: ts.Type, path: string, node: ts.Node): void => {
    let type = start;
    for (const part of path.split("/")) {
      const member = type.getProperty(part);
      if (member === undefined) {
        faults.push(`${placeText(node)}: load("${path}") names no member “${part}”`);
        return;
      }
      note(member, node);
      type = checker.getTypeOfSymbol(member);
      if (part === "items") type = checker.getIndexTypeOfType(type, ts.IndexKind.Number) ?? type;
    }
  };

  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node)) return;
    if (ts.isCallExpression(node)) {
      noteLoad(node);
      const signature = checker.getResolvedSignature(node)?.declaration;
      if (signature !== undefined) noteDeclarations([signature], node);
    } else if (ts.isPropertyAccessExpression(node)) {
      const isCalled = ts.isCallExpression(node.parent) && node.parent.expression === node;
      if (!isCalled) note(checker.getSymbolAtLocation(node.name), node);
    } else if (ts.isObjectBindingPattern(node)) {
      const type = checker.getTypeAtLocation(node);
      for (const { propertyName, name } of node.elements) {
        note(type.getProperty((propertyName ?? name).getText()), node);
      }
    } else if (ts.isObjectLiteralExpression(node)) {
      const wanted = checker.getContextualType(node);
      const type = wanted === undefined ? undefined : checker.getNonNullableType(wanted);
      for (const { name } of node.properties) {
        if (name !== undefined) note(type?.getProperty(name.getText()), node);
      }
    }
    ts.forEachChild(node, visit);
  };
  for (const file of files) visit(file);
  return { uses, faults };
}

const listItems = (argument: ts.Expression): readonly ts.Expression[] =>
  ts.isArrayLiteralExpression(argument) ? argument.elements : [argument];

const isExcelType = (type: ts.Type): boolean =>
  (type.getSymbol()?.declarations ?? []).some(isExcels);

/** Declared in the namespace `Excel` or `CustomFunctions` of the Office types. */
function isExcels(declaration: ts.Node): boolean {
  if (
    !/@types\/(office-js|custom-functions-runtime)\//.test(declaration.getSourceFile().fileName)
  ) {
    return false;
  }
  for (let at = declaration; !ts.isSourceFile(at); at = at.parent) {
    if (ts.isModuleDeclaration(at) && /^(Excel|CustomFunctions)$/.test(at.name.text)) return true;
  }
  return false;
}

/**
 * The set that the documentation names, of the member or else of what it belongs to. Of a member that
 * learned more later (`1.1 for reading; 1.2 for setting`) the first.
 */
function introducedIn(
  declaration: ts.Node,
): { readonly set: string; readonly version: string } | null {
  for (let at = declaration; !ts.isSourceFile(at); at = at.parent) {
    const { text } = at.getSourceFile();
    const comment = text.slice(at.getFullStart(), at.getStart());
    const [, set = "", version = ""] =
      [...comment.matchAll(/\[\s*Api set:\s*(\w+)\s+(BETA|\d+\.\d+)/g)].at(-1) ?? [];
    if (set !== "") return { set, version: version === "BETA" ? "999.0" : version };
    if (ts.isModuleDeclaration(at)) return null;
  }
  return null;
}

function memberName(declaration: ts.Node): string {
  const nameOf = (node: ts.Node): string =>
    (node as { readonly name?: ts.Node }).name?.getText() ?? "";
  const owner = ts.isSourceFile(declaration.parent) ? "" : nameOf(declaration.parent);
  const own = nameOf(declaration);
  return owner === "" || owner === "Excel" ? own : `${owner}.${own}`;
}

function placeOf(node: ts.Node): { readonly file: string; readonly line: number } {
  const file = node.getSourceFile();
  return {
    file: file.fileName,
    line: file.getLineAndCharacterOfPosition(node.getStart()).line + 1,
  };
}

const placeText = (node: ts.Node): string => {
  const { file, line } = placeOf(node);
  return `${file}:${line}`;
};

/** The uses that neither the floor nor a question before them allows, each in a line. */
export const apiFaults = ({ uses, faults }: ApiUses, floor: Sets): readonly string[] => [
  ...new Set([
    ...faults,
    ...uses.flatMap(({ member, set, version, file, line, known }) => {
      const have = [floor.get(set), known.get(set)].filter((each) => each !== undefined);
      return have.some((each) => later(version, each) <= 0)
        ? []
        : [
            `${file}:${line}: ${member} needs ${set} ${version}, and the manifest promises ${floor.get(set) ?? "none"}`,
          ];
    }),
  ]),
];
