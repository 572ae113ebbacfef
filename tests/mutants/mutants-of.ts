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
  /** The expression that holds the change: who works it out, meets the mutant. Offsets in `before`. */
  readonly within: readonly [start: number, end: number];
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

const LARGE = 100;

/**
 * Every change of one operator, number, truth value or condition in a source text. Where
 * `numbersAreData`, numbers stay as they are.
 *
 * A number grows by one, and from a hundred on to twice its size: one more of so many makes no
 * difference that a rule could mean. Of `a < b ? -1 : 1` the ones stay, too: it is the answer of a comparison, of which only the sign
 * is read. And so does that of `list[at] ?? 0` where lists are typed arrays: it is there for the compiler, and never worked out.
 */
export function mutantsOf(
  path: string,
  before: string,
  { numbersAreData = false }: { readonly numbersAreData?: boolean } = {},
): readonly Mutant[] {
  const source = ts.createSourceFile(path, before, ts.ScriptTarget.Latest, true);
  const hasTypedArrays = /\b(?:Float64|Uint32)Array\b/.test(before);
  const found: Mutant[] = [];
  const change = (place: ts.Node, to: string, within: ts.Node = place) => {
    const [start, end] = [place.getStart(), place.end];
    const { line } = source.getLineAndCharacterOfPosition(start);
    const from = before.slice(start, end);
    const text = before.split('\n')[line]?.trim() ?? '';
    found.push({
      path,
      before,
      after: before.slice(0, start) + to + before.slice(end),
      line: line + 1,
      change: `${path}: ${from} → ${to}, in: ${text}`,
      within: [within.getStart(), within.end],
    });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) {
      const sign = node.operatorToken;
      const to = SWAPPED.get(sign.getText());
      // Joined texts are wording, which no test need pin letter by letter.
      const joinsText = sign.getText() === '+' && /['"`]/.test(node.getText());
      if (to && !joinsText) change(sign, to, node);
    } else if (ts.isNumericLiteral(node)) {
      const isKey = ts.isPropertyAssignment(node.parent) && node.parent.name === node;
      const isSign = ts.isConditionalExpression(upFrom(node)) && isOrder(upFrom(node));
      const isForCompiler = hasTypedArrays && isDefaultOfElement(node);
      if (!numbersAreData && !isSign && !isForCompiler) {
        const value = Number(node.text);
        change(
          node,
          String(value < LARGE ? value + 1 : value * 2),
          isKey ? node.parent.parent : node,
        );
      }
    } else if (node.kind === ts.SyntaxKind.TrueKeyword) {
      change(node, 'false');
    } else if (node.kind === ts.SyntaxKind.FalseKeyword) {
      change(node, 'true');
    } else if (ts.isConditionalExpression(node)) {
      const { condition } = node;
      change(condition, `!(${condition.getText()})`);
    } else if (ts.isIfStatement(node)) {
      const { expression } = node;
      change(expression, `!(${expression.getText()})`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** What holds a number, over its minus. */
function upFrom({ parent }: ts.Node): ts.Node {
  return ts.isPrefixUnaryExpression(parent) ? parent.parent : parent;
}

/** `list[at] ?? 0` */
function isDefaultOfElement(node: ts.Node): boolean {
  const { parent } = node;
  return (
    ts.isBinaryExpression(parent) &&
    parent.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken &&
    ts.isElementAccessExpression(parent.left) &&
    !parent.left.questionDotToken
  );
}

/** `a < b ? -1 : 1` */
function isOrder(node: ts.Node): boolean {
  return ts.isConditionalExpression(node) && /\?\s*(-1\s*:\s*1|1\s*:\s*-1)$/.test(node.getText());
}

/** The text with `globalThis.met?.(ID)` at each expression that holds a change. */
export function withProbes(
  before: string,
  mutants: readonly { readonly id: number; readonly within: readonly [number, number] }[],
): string {
  // What lies inside another ends before it and begins after it, also where both share an edge.
  const inserted = mutants.flatMap(({ id, within: [start, end] }) => [
    { at: start, rank: 1, length: -(end - start), id, text: `(globalThis.met?.(${id}), ` },
    { at: end, rank: 0, length: end - start, id: -id, text: ')' },
  ]);
  inserted.sort((a, b) => b.at - a.at || b.rank - a.rank || b.length - a.length || b.id - a.id);
  let text = before;
  for (const { at, text: piece } of inserted) text = text.slice(0, at) + piece + text.slice(at);
  return text;
}
