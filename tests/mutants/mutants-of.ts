import ts from 'typescript';

/** A file with one place changed. */
export interface Mutant {
  readonly path: string;
  readonly before: string;
  readonly after: string;
  /** From 1. */
  readonly line: number;
  /** `src/cut/rate-of-loss.ts: < → <=, in: if (days < 10) return null;` */
  readonly change: string;
}

const SWAPPED: ReadonlyMap<string, string> = new Map([
  ['<', '<='],
  ['<=', '<'],
  ['>', '>='],
  ['>=', '>'],
  ['===', '!=='],
  ['!==', '==='],
  ['+', '-'],
  ['-', '+'],
  ['*', '/'],
  ['/', '*'],
  ['&&', '||'],
  ['||', '&&'],
]);

/** Every change of one operator, number, truth value or condition in a source text. */
export function mutantsOf(path: string, before: string): readonly Mutant[] {
  const source = ts.createSourceFile(path, before, ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const change = (start: number, end: number, to: string) => {
    const { line } = source.getLineAndCharacterOfPosition(start);
    const from = before.slice(start, end);
    const text = before.split('\n')[line]?.trim() ?? '';
    found.push({
      path,
      before,
      after: before.slice(0, start) + to + before.slice(end),
      line: line + 1,
      change: `${path}: ${from} → ${to}, in: ${text}`,
    });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) {
      const sign = node.operatorToken;
      const to = SWAPPED.get(sign.getText());
      // Joined texts are wording, which no test need pin letter by letter.
      const joinsText = sign.getText() === '+' && /['"`]/.test(node.getText());
      if (to && !joinsText) change(sign.getStart(), sign.end, to);
    } else if (ts.isNumericLiteral(node)) {
      change(node.getStart(), node.end, String(Number(node.text) + 1));
    } else if (node.kind === ts.SyntaxKind.TrueKeyword) {
      change(node.getStart(), node.end, 'false');
    } else if (node.kind === ts.SyntaxKind.FalseKeyword) {
      change(node.getStart(), node.end, 'true');
    } else if (ts.isConditionalExpression(node)) {
      const { condition } = node;
      change(condition.getStart(), condition.end, `!(${condition.getText()})`);
    } else if (ts.isIfStatement(node)) {
      const { expression } = node;
      change(expression.getStart(), expression.end, `!(${expression.getText()})`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}
