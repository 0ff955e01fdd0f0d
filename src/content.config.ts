import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';

export const collections = {
  guides: defineCollection({
    loader: glob({ base: './content/guides', pattern: '*.mdx' }),
    schema: z.object({ title: z.string(), order: z.number(), summary: z.string(), question: z.string() }).strict(),
  }),
};
