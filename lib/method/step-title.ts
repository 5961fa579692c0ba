import type { Stretch } from '#lib/method/method-step';

/** Up to here a title may hold a list; a longer one is cut at its last comma before it. In characters. */
const WITH_COMMAS = 48;
/** A title is cut here, at a blank. In characters. */
const LONGEST = 70;
/** Words that lead to a time, a temperature or a place and say nothing without it. */
const HANGING =
  /(?:[\s,(–—:-]+(?:for|at|about|around|roughly|approximately|just|another|a|an|further|the|to|in|on|over|of|with|and|or|up|at least|least|until|then|between|from|by|some|is|takes|exactly|no more than|more|temperature)|[\s,(–—:;/-]+)$/i;

/**
 * The sentence's own words, short: those of the action before its minutes, degrees and 'until'.
 * `stepTitle('Bake the loaf for 20 minutes', …)` → `'Bake the loaf'`.
 * @param cuts where its minutes, degrees and inside temperature stand in the text
 * @param verb said where nothing is left
 */
export function stepTitle(
  text: string,
  words: Stretch,
  cuts: readonly (Stretch | null)[],
  verb: string,
): string {
  const whole = text.slice(words.start, words.end);
  const at = cuts.flatMap((cut) =>
    cut && cut.start >= words.start ? [cut.start - words.start] : [],
  );
  const until = /\(|;|:| until | till | or until |–|—/.exec(whole)?.index ?? whole.length;
  const uncut = whole.slice(0, Math.min(...at, until));
  const comma = uncut.lastIndexOf(',', WITH_COMMAS);
  let title = uncut.length > WITH_COMMAS && comma > 0 ? uncut.slice(0, comma) : uncut;
  for (let before = ''; before !== title;) {
    before = title;
    title = title.replace(HANGING, '').trim();
  }
  const named = title.length >= 3 ? title : verb || whole.split(/[,.;:]/)[0]?.trim() || 'Step';
  const short =
    named.length > LONGEST ? `${named.slice(0, named.lastIndexOf(' ', LONGEST))} …` : named;
  return short.charAt(0).toUpperCase() + short.slice(1).replace(/\s+/g, ' ');
}
