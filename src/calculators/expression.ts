/**
 * Reads the right side of an equation into a tree. Quantity keys, decimal numbers, + - * / ^,
 * parentheses and the functions below; `^` binds right to left and tighter than a leading minus.
 * One tree serves the formula in letters and the formula in numbers, so neither is typed by hand.
 */
export type Node =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'minus'; readonly of: Node }
  | { readonly kind: 'binary'; readonly op: '+' | '-' | '*' | '/' | '^'; readonly left: Node; readonly right: Node }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Node[] };

export const functionNames = ['sqrt', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'exp', 'log', 'abs', 'min', 'max'] as const;

/** @throws SyntaxError naming the expression and where it stops making sense */
export function parseExpression(source: string): Node {
  const tokens = source.match(/\d+\.?\d*(?:e-?\d+)?|[A-Za-z]\w*|[-+*/^(),]|\S/g) ?? [];
  let at = 0;
  const fail = (): never => {
    throw new SyntaxError(`expression: expected an operand or operator, found ${tokens[at] ?? 'its end'} in ${source}`);
  };
  const take = (token: string): boolean => tokens[at] === token && ++at > 0;

  const sum = (): Node => {
    let left = product();
    for (;;) {
      const op = tokens[at];
      if (op !== '+' && op !== '-') return left;
      at++;
      left = { kind: 'binary', op, left, right: product() };
    }
  };
  const product = (): Node => {
    let left = signed();
    for (;;) {
      const op = tokens[at];
      if (op !== '*' && op !== '/') return left;
      at++;
      left = { kind: 'binary', op, left, right: signed() };
    }
  };
  const signed = (): Node => (take('-') ? { kind: 'minus', of: signed() } : power());
  const power = (): Node => {
    const left = atom();
    return take('^') ? { kind: 'binary', op: '^', left, right: signed() } : left;
  };
  const atom = (): Node => {
    const token = tokens[at];
    if (token === undefined) return fail();
    if (take('(')) {
      const inner = sum();
      return take(')') ? inner : fail();
    }
    if (/^\d/.test(token)) {
      at++;
      return { kind: 'number', value: Number(token) };
    }
    if (!/^[A-Za-z]/.test(token)) return fail();
    at++;
    if (!take('(')) return { kind: 'name', name: token };
    if (!(functionNames as readonly string[]).includes(token)) throw new SyntaxError(`expression: expected a function among ${functionNames.join(' ')}, found ${token} in ${source}`);
    const args = [sum()];
    while (take(',')) args.push(sum());
    return take(')') ? { kind: 'call', name: token, args } : fail();
  };

  const tree = sum();
  return at === tokens.length ? tree : fail();
}

/** The quantity keys an expression uses, without `g` and `pi`. */
export function namesIn(node: Node): string[] {
  if (node.kind === 'name') return node.name === 'pi' || node.name === 'g' ? [] : [node.name];
  if (node.kind === 'minus') return namesIn(node.of);
  if (node.kind === 'binary') return [...namesIn(node.left), ...namesIn(node.right)];
  if (node.kind === 'call') return node.args.flatMap(namesIn);
  return [];
}
