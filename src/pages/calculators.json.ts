import { catalogue } from '../build/catalogue.ts';

export const GET = (): Response => new Response(JSON.stringify(catalogue(), null, 1), { headers: { 'content-type': 'application/json' } });
