/** In the browser: the demo truck's values that the calculators brought so far use. */
export const demo: Record<string, string | undefined> = {};

export function demoText(key: string): string | undefined {
  return demo[key];
}
