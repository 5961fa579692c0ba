import type { PublishedNumber } from '#lib/figures/published-numbers';

/** A number that was said and that the ingredients do not support (†), or that adds up only by rounding (*), is marked apart. */
export function markOf(number: PublishedNumber): '' | '*' | '†' {
  if (isSaidAgainst(number)) return '†';
  return number.onlyByRounding ? '*' : '';
}

/** Whether a number stands as it was said although the ingredients, or the other numbers said, do not support it. */
export function isSaidAgainst({ said, clashes, status }: PublishedNumber): boolean {
  return status === 'known' && said !== null && said.fixed && (said.outside || clashes);
}
