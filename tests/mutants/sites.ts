/** Where a source file can be changed by one small step that a test ought to notice. */
import ts from 'typescript';

export interface Site {
  /** Path from the project's root. */
  readonly file: string;
  readonly line: number;
  /** Characters [from, to) of the file are replaced by `text`. */
  readonly from: number;
  readonly to: number;
  readonly was: string;
  readonly text: string;
}

const OPERATORS: Readonly<Record<string, string>> = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '<': '>=',
  '>': '<=',
  '<=': '>',
  '>=': '<',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
  '+=': '-=',
  '-=': '+=',
  '*=': '/=',
  '/=': '*=',
};
const MATH: Readonly<Record<string, string>> = {
  sin: 'cos',
  cos: 'sin',
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  round: 'floor',
  log: 'log10',
  log10: 'log',
};

/** All sites of a file, in the order of the text. Types, imports and strings hold none. */
export function sitesOf(file: string, code: string): Site[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true);
  const sites: Site[] = [];
  const add = (node: ts.Node, text: string): void => {
    const from = node.getStart(source);
    const line = source.getLineAndCharacterOfPosition(from).line + 1;
    sites.push({ file, line, from, to: node.getEnd(), was: code.slice(from, node.getEnd()), text });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node) || ts.isTypeNode(node)) return;
    if (ts.isBinaryExpression(node)) {
      const operator = node.operatorToken.getText(source);
      const swapped = joinsText(node) ? undefined : OPERATORS[operator];
      if (swapped !== undefined) add(node.operatorToken, swapped);
    }
    if (ts.isNumericLiteral(node)) add(node, otherNumber(node.getText(source)));
    if (ts.isPrefixUnaryExpression(node) && !ts.isNumericLiteral(node.operand)) {
      if (node.operator === ts.SyntaxKind.MinusToken || node.operator === ts.SyntaxKind.ExclamationToken)
        add(node, `(${node.operand.getText(source)})`);
    }
    if (ts.isPropertyAccessExpression(node) && node.expression.getText(source) === 'Math') {
      const other = MATH[node.name.text];
      if (other !== undefined) add(node.name, other);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return sites;
}

/** A sum of which a side is text is not arithmetic. */
const joinsText = (node: ts.BinaryExpression): boolean =>
  node.operatorToken.kind === ts.SyntaxKind.PlusToken && [node.left, node.right].some(isText);

const isText = (node: ts.Expression): boolean =>
  ts.isStringLiteralLike(node) ||
  ts.isTemplateExpression(node) ||
  (ts.isBinaryExpression(node) && joinsText(node)) ||
  (ts.isParenthesizedExpression(node) && isText(node.expression));

/** A whole number becomes the next one, any other a third more: far enough that it matters, near enough to be overlooked. */
const otherNumber = (text: string): string => {
  const value = Number(text.replaceAll('_', ''));
  return Number.isInteger(value) && Math.abs(value) < 1000 ? String(value + 1) : String(value * 1.3);
};

/** The file's text with the one change made. */
export const applied = (code: string, { from, to, text }: Site): string => code.slice(0, from) + text + code.slice(to);
