import { getCollection } from 'astro:content';
import { calculatorById } from '../calculators/index.ts';

/** Guide slugs and calculator ids as links; an unknown one stops the build. */
export async function relatedLinks(names: readonly string[]): Promise<{ href: string; title: string }[]> {
  const guides = await getCollection('guides');
  return names.map((name) => {
    const guide = guides.find(({ id }) => id === name);
    if (guide) return { href: `/guides/${name}/`, title: guide.data.title };
    return { href: `/calculators/${name}/`, title: calculatorById(name).title };
  });
}

/** Ids of the calculators that stand in a guide's text. */
export function calculatorsIn(body: string | undefined): string[] {
  return [...(body ?? '').matchAll(/<Calculator\s+id="([^"]+)"/g)].map((match) => match[1] as string);
}
