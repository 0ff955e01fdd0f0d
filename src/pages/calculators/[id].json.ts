import type { APIRoute } from 'astro';
import { pageData } from '../../build/page-data.ts';
import { calculators } from '../../calculators/index.ts';

export const getStaticPaths = () => [...calculators.map(({ id }) => id), 'all'].map((id) => ({ params: { id } }));

export const GET: APIRoute = ({ params }) =>
  new Response(JSON.stringify(params.id === 'all' ? pageData([], true) : pageData([params.id as string])), { headers: { 'content-type': 'application/json' } });
