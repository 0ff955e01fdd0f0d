import type { ComponentType } from 'preact';
import type { RowsFieldProps } from './rows-field.tsx';

/** What only some calculators need, put here by the script that brings it, so that the others need not load it. */
export const editors: { Rows?: ComponentType<RowsFieldProps> } = {};
