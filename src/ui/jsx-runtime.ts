import { Fragment, h } from 'preact';
import type { ComponentType, VNode } from 'preact';

/**
 * What compiled JSX calls, for the browser only. Preact's own also serves templates precompiled for servers, which
 * no page here uses, and that is half of its weight.
 */
export function jsx(type: ComponentType | string, props: Record<string, unknown>, key?: string): VNode {
  return h(type as string, key === undefined ? props : { ...props, key }) as unknown as VNode;
}
export { Fragment, jsx as jsxs };
