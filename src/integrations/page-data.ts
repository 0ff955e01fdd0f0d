import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [child: string]: unknown;
}

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Modules that are tables of plain data: in the browser each calculator fetches the part it needs. */
const fromPage = new Map([
  [here('../calculators/vocabulary/index.ts'), here('../ui/page-vocabulary.ts')],
  [here('../build/demo.ts'), here('../ui/page-demo.ts')],
  [here('../build/demo-sure.ts'), here('../ui/page-sure.ts')],
]);

/**
 * A record's words and numbers travel as JSON; its functions travel in the script. This plugin takes out of each
 * record, for the browser only, every property that is plain data; `src/ui/page-data.ts` puts them back from what
 * `src/build/page-data.ts` wrote. A newcomer's record needs to know nothing of it.
 */
export function pageData(): Plugin {
  return {
    name: 'page-data',
    enforce: 'pre',
    applyToEnvironment: (environment) => environment.config.consumer === 'client',
    async resolveId(source, importer, options) {
      if (source === 'preact/jsx-runtime') return here('../ui/jsx-runtime.ts');
      const found = await this.resolve(source, importer, { ...options, skipSelf: true });
      const other = found && fromPage.get(found.id);
      return other && importer !== other ? other : undefined;
    },
    transform: {
      order: 'post',
      filter: { id: /src\/calculators\/(records|helpers)\/[^/]+\.ts$/ },
      handler(code) {
        const cuts: Node[] = [];
        find(this.parse(code) as unknown as Node, (call) => {
          const callee = call.callee as Node;
          if (call.type === 'CallExpression' && /^define[A-Z]/.test(String(callee.name))) plainProperties((call.arguments as Node[])[0], cuts, new Set(['id']));
        });
        const kept = cuts.sort((a, b) => b.start - a.start).reduce((text, cut) => `${text.slice(0, cut.start)}${text.slice(cut.end).replace(/^\s*,/, '')}`, code);
        return { code: kept, map: null };
      },
    },
  };
}

/** Never read in the browser. */
const paperOnly = new Set(['paper', 'fires', 'silent']);

/** Collects what is plain, but for the properties named in `keep`. Functions are not looked into. */
function plainProperties(node: Node | undefined, cuts: Node[], keep = new Set<string>()): void {
  if (node?.type === 'ArrayExpression') for (const element of node.elements as Node[]) plainProperties(element, cuts);
  if (node?.type !== 'ObjectExpression') return;
  for (const property of node.properties as Node[]) {
    const name = String((property.key as Node | undefined)?.name);
    if (keep.has(name)) continue;
    if (paperOnly.has(name) || isPlain(property.value as Node)) cuts.push(property);
    else plainProperties(property.value as Node, cuts);
  }
}

function isPlain(node: Node | undefined): boolean {
  switch (node?.type) {
    case 'Literal': return true;
    case 'TemplateLiteral': return (node.expressions as Node[]).length === 0;
    case 'UnaryExpression': return isPlain(node.argument as Node);
    case 'ArrayExpression': return (node.elements as Node[]).every(isPlain);
    case 'ObjectExpression': return (node.properties as Node[]).every((property) => property.type === 'Property' && isPlain(property.value as Node));
    default: return false;
  }
}

function find(node: unknown, visit: (node: Node) => void): void {
  if (typeof node !== 'object' || node === null) return;
  if ('type' in node) visit(node as Node);
  for (const child of Object.values(node)) find(child, visit);
}
