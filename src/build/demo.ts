import demo from '../../content/demo-truck.json' with { type: 'json' };

/** What the demo truck's file says of one quantity, as typed there, or undefined when it is computed. */
export function demoText(key: string): string | undefined {
  return Object.hasOwn(demo.values, key) ? (demo.values as Readonly<Record<string, string>>)[key] : undefined;
}
