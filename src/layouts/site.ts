export const siteName = 'Dropped & Stopped';
export const tagline = 'Brakes and body drop, worked out before you cut';

export const navigation = [
  { href: '/guides/', name: 'Guides' },
  { href: '/calculators/', name: 'Calculators' },
  { href: '/truck/', name: 'Your truck' },
  { href: '/sources/', name: 'Sources' },
  { href: '/safety/', name: 'Safety' },
] as const;
