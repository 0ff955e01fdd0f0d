import Aside from './Aside.astro';
import Calculator from './Calculator.astro';
import Caution from './Caution.astro';
import Checklist from './Checklist.astro';
import Cite from './Cite.astro';
import Demo from './Demo.astro';
import Equation from './Equation.astro';
import Figure from './Figure.astro';
import Sheet from './Sheet.astro';
import Table from './Table.astro';
import Tex from './Tex.astro';

/** What a guide may use without importing it. */
export const parts = { Aside, Calculator, Caution, Checklist, Cite, Demo, Equation, Figure, Sheet, Tex, table: Table };
