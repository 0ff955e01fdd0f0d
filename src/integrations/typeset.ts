import type { Plugin } from 'vite';

const units = 'in|ft|lbf|lb|psi|bar|mm|cm³|cm|m|N·m|N|kN|kPa|kg|g|degrees?|deg|mph|km/h|s|%|turns?|points?';
const numberAndUnit = new RegExp(`(\\d) (?=(?:${units})(?![\\w-]))`, 'g');

/** Keeps numbers with their units, and a mixed fraction in one piece, when a guide's line breaks. */
export function typeset(): Plugin {
  return {
    name: 'typeset',
    enforce: 'pre',
    transform: {
      order: 'pre',
      filter: { id: /content\/guides\/[^/]+\.mdx/ },
      handler: (code) => ({ code: code.replace(numberAndUnit, '$1\u00a0').replace(/(\d)-(\d{1,2}\/\d)/g, '$1\u2011$2'), map: null }),
    },
  };
}
