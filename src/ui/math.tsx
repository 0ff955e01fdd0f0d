import type { ComponentChildren, VNode } from 'preact';
import type { Node } from '../calculators/expression.ts';
import { entryOf } from '../calculators/evaluate.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';

/** `raised`: under a power. `turned`: inside a sine, cosine or tangent, where an angle may stand in degrees. */
type Leaf = (name: string, raised?: boolean, turned?: boolean) => VNode;
const turns = /^(sin|cos|tan)$/;

const strength = (node: Node): number => {
  if (node.kind === 'binary') return node.op === '+' || node.op === '-' ? 1 : node.op === '/' ? 4 : node.op === '*' ? 2 : 3;
  return node.kind === 'minus' ? 1 : 4;
};

const inParentheses = (inner: ComponentChildren): VNode => (
  <mrow><mo>(</mo>{inner}<mo>)</mo></mrow>
);

/** In one piece, where a place takes just one: the parts of a fraction and of a power. */
const inOne = (node: Node, inner: VNode): VNode => (node.kind === 'binary' ? <mrow>{inner}</mrow> : inner);

/** A tree as MathML; `leaf` decides whether a name shows as its letter or as its number. Sums and products stand in a row already. */
function draw(node: Node, leaf: Leaf, times: VNode): VNode {
  const at = (child: Node, least: number): VNode => (strength(child) < least ? inParentheses(draw(child, leaf, times)) : draw(child, leaf, times));
  switch (node.kind) {
    case 'number': return <mn>{String(node.value)}</mn>;
    case 'name': return leaf(node.name);
    case 'minus': return <mrow><mo>−</mo>{at(node.of, 2)}</mrow>;
    case 'call': {
      const inside: Leaf = turns.test(node.name) ? (name, raised) => leaf(name, raised, true) : leaf;
      const args = node.args.map((arg) => draw(arg, inside, times));
      if (node.name === 'sqrt') return <msqrt>{args}</msqrt>;
      if (node.name === 'abs') return <mrow><mo>|</mo>{args}<mo>|</mo></mrow>;
      const list = args.flatMap((arg, k) => (k === 0 ? [arg] : [<mo separator>,</mo>, arg]));
      return <mrow><mi>{node.name.replace(/^a(?=sin|cos|tan)/, 'arc').replace('log', 'ln')}</mi><mo>&#x2061;</mo>{inParentheses(list)}</mrow>;
    }
    case 'binary':
      if (node.op === '/') return <mfrac>{inOne(node.left, draw(node.left, leaf, times))}{inOne(node.right, draw(node.right, leaf, times))}</mfrac>;
      if (node.op === '^') {
        const base = node.left.kind === 'binary' && node.left.op === '/' ? inParentheses(draw(node.left, leaf, times)) : node.left.kind === 'name' ? leaf(node.left.name, true) : at(node.left, 4);
        return <msup>{base}{inOne(node.right, draw(node.right, leaf, times))}</msup>;
      }
      if (node.op === '*') return <>{at(node.left, 2)}{times}{at(node.right, 2)}</>;
      return <>{at(node.left, 1)}<mo>{node.op === '-' ? '−' : '+'}</mo>{at(node.right, node.op === '-' ? 2 : 1)}</>;
  }
}

/** About how many letters wide a tree is drawn, names as wide as `of` has it. Paper cannot be scrolled: what is long is printed small. */
export function lettersOf(node: Node, of: (name: string) => number): number {
  switch (node.kind) {
    case 'number': return String(node.value).length;
    case 'name': return of(node.name);
    case 'minus': return 1 + lettersOf(node.of, of);
    case 'call': return node.args.reduce((sum, arg) => sum + 1 + lettersOf(arg, of), /^(sqrt|abs)$/.test(node.name) ? 1 : node.name.length);
    case 'binary': {
      // In a product a sum stands in parentheses.
      const at = (child: Node): number => lettersOf(child, of) + (node.op === '*' && strength(child) < 2 ? 2 : 0);
      const [left, right] = [at(node.left), at(node.right)];
      return node.op === '/' ? Math.max(left, right) : node.op === '^' ? left + 0.7 * right : left + right + 2;
    }
  }
}

/** 'p_f' as a letter with a subscript. */
export function Symbol({ name }: { name: string }): VNode {
  if (name === 'pi') return <mi>π</mi>;
  if (name === 'g') return <mi>g</mi>;
  const entry = entryOf(name);
  const [base, sub] = (isQuantity(entry) ? entry.symbol : entry.name).split('_') as [string, string?];
  return sub === undefined ? <mi>{base}</mi> : <msub><mi>{base}</mi><mtext>{sub}</mtext></msub>;
}

export function InLetters({ tree }: { tree: Node }): VNode {
  return draw(tree, (name) => <Symbol name={name} />, <mspace width="0.2em" />);
}

export function InNumbers({ tree, number }: { tree: Node; number: (name: string, turned?: boolean) => string }): VNode {
  return draw(tree, (name, raised, turned) => {
    if (name === 'pi') return <mi>π</mi>;
    const text = number(name, turned);
    // Not <mtext>: it counts as space, and the signs beside it would lose theirs.
    // (10 in)², not 10 in²: the power takes the number along.
    return text.startsWith('−') || (raised && /[^\d.,\u202f]/.test(text)) ? inParentheses(<mn>{text}</mn>) : <mn>{text}</mn>;
  }, <mo>×</mo>);
}
