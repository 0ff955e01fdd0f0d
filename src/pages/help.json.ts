import { helpData } from '../build/page-data.ts';

export const GET = (): Response => new Response(JSON.stringify(helpData()), { headers: { 'content-type': 'application/json' } });
