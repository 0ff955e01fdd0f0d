import { data } from './page-data.ts';

/** In the browser: the demo truck's values that this page uses. */
export function demoText(key: string): string | undefined {
  return data.demo[key];
}
