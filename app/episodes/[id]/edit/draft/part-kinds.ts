import type { Offered } from '#lib/draft/offer';

/** What each part of an offer is, in the words of the screen. */
export const PART_KINDS: Readonly<Record<Offered['kind'], string>> = {
  hook: 'First words',
  disclosure: 'Given or paid',
  link: 'Link',
  times: 'Place in the edit',
  portions: 'Portions',
  line: 'Ingredient',
  method: 'Method',
  step: 'Step',
};
