import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { entryOf } from '../calculators/evaluate.ts';
import { parseExpression } from '../calculators/expression.ts';
import type { Node } from '../calculators/expression.ts';
import type { AnyCalculator, Equation, Values } from '../calculators/record.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';
import type { System } from '../build/fields.ts';
import { sayIn } from '../build/fields.ts';
import { formatIn } from '../units/index.ts';
import { ResultList } from './result-list.tsx';
import { InLetters, InNumbers, lettersOf, Symbol } from './math.tsx';

const trees = new Map<string, Node>();

function treeOf(expression: string): Node {
  const tree = trees.get(expression) ?? parseExpression(expression);
  trees.set(expression, tree);
  return tree;
}

/** One equation: in letters, in the reader's numbers, in words. Numbers are left out while there is no result. */
export function EquationView({ equation, values, system }: { equation: Equation; values?: Values; system: System }): VNode {
  const say = sayIn(system);
  const tree = treeOf(equation.expression);
  const entry = entryOf(equation.result);
  const resultIsAngle = isQuantity(entry) && entry.dimension === 'angle';
  const number = (name: string, turned = true): string => {
    if (name === 'g') return formatIn(1, 'brakingRate', system === 'us' ? 'ft/s2' : 'm/s2', 4);
    const of = entryOf(name);
    // An angle that multiplies a length counts in radians, and has to be shown so to be followed with a pocket calculator.
    if (isQuantity(of) && of.dimension === 'angle' && !turned && !resultIsAngle) return formatIn(values?.[name] as number, 'angle', 'rad', 4);
    return isQuantity(of) ? say(values?.[name] as number, of.dimension, 4) : '';
  };
  const letters = Math.max(2 * lettersOf(tree, () => 1), values ? lettersOf(tree, (name) => (name === 'pi' ? 1 : number(name).replace(/^−.*/, '($&)').length)) : 0);
  return (
    <div class={`equation${letters > 100 ? ` long${Math.min(4, Math.floor((letters - 65) / 35))}` : ''}`}>
      <div class="scroll" tabIndex={0} role="group" aria-label={`Equation for ${entry.name}`}>
        <math display="block"><Symbol name={equation.result} /><mo>=</mo><InLetters tree={tree} /></math>
        {values && <math display="block"><mo>=</mo><InNumbers tree={tree} number={(name, turned = false) => number(name, turned)} /></math>}
        {values && <math display="block"><mo>=</mo><mn class="strong">{number(equation.result)}</mn></math>}
      </div>
      <p>{equation.words} {equation.found && `${equation.found} `}<small>({equation.source})</small></p>
    </div>
  );
}

/** The headline's equation in view, the other steps in order below it. */
export function Working({ record, values, system, others }: { record: AnyCalculator; values?: Values; system: System; others: readonly string[] }): VNode {
  const shown = record.equations.filter((equation) => !values || (equation.when?.(values) ?? true));
  const first = shown.find((equation) => equation.result === record.outputs[0]);
  const rest = shown.filter((equation) => equation !== first);
  return (
    <div class="working">
      {first && <EquationView equation={first} values={values} system={system} />}
      {record.methods?.map(({ result, words, source }) => <p key={result}><strong>{entryOf(result).name}:</strong> {words} <small>({source})</small></p>)}
      {rest.length > 0 && <Steps equations={rest} values={values} system={system} others={others} />}
    </div>
  );
}

/** Drawn as built, then only while open or printed: a keystroke should not pay for what nobody sees. */
function Steps({ equations, values, system, others }: { equations: readonly Equation[]; values?: Values; system: System; others: readonly string[] }): VNode {
  const [open, setOpen] = useState(false);
  const built = useRef(values);
  useEffect(() => {
    const print = (): void => setOpen(true);
    addEventListener('beforeprint', print);
    return () => removeEventListener('beforeprint', print);
  }, []);
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>All the steps, with {values ? 'these' : 'their'} numbers</summary>
      {(open || values === built.current) && (
        <>
          {values && <ResultList keys={others} values={values} say={sayIn(system)} />}
          {equations.map((equation) => <EquationView key={equation.result + equation.expression} equation={equation} values={values} system={system} />)}
        </>
      )}
    </details>
  );
}
