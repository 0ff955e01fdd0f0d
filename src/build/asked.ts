import { demoText } from './demo.ts';

/** A number of the truck, in a text: '{circuit-failure:travelFrontDead | controlForce = 90 lbf}'. */
export interface Asked {
  readonly calculator: string;
  readonly of: string;
  readonly set: Readonly<Record<string, string>>;
}

/**
 * A text in its parts: words, and the numbers to be filled in.
 * @throws RangeError for braces that hold something else
 */
export function partsOf(text: string): readonly (string | Asked)[] {
  return text.split(/(\{[^}]*\})/).filter((part) => part !== '').map((part) => (part.startsWith('{') ? asked(part.slice(1, -1)) : part));
}

/** Also from a page's attribute: 'circuit-failure:travelFrontDead | controlForce = 90 lbf'. */
export function asked(text: string): Asked {
  const [number = '', ...changes] = text.split('|').map((part) => part.trim());
  const found = /^([a-z-]+):(\w+)$/.exec(number);
  const set = changes.map((change) => /^(\w+)\s*=\s*(.+)$/.exec(change));
  if (!found || set.includes(null)) throw new RangeError(`checklist: expected calculator:result | input = text, found ${text}`);
  return { calculator: found[1] as string, of: found[2] as string, set: Object.fromEntries(set.map((match) => [match?.[1], match?.[2]])) };
}

export function askedText({ calculator, of, set }: Asked): string {
  return [`${calculator}:${of}`, ...Object.entries(set).map(([key, text]) => `${key} = ${text}`)].join(' | ');
}

/** Whether a build with this choice gets the item; what nobody chose is the demo truck's. */
export function applies(condition: string | undefined, chosen: (key: string) => string | undefined = () => undefined): boolean {
  if (condition === undefined) return true;
  const [key = '', options = ''] = condition.split('=');
  return options.split('|').includes(chosen(key) ?? demoText(key) ?? '');
}
