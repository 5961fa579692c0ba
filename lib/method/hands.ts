import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { Clause } from '#lib/method/clauses';
import type { Hands, Place, Setting } from '#lib/method/method-step';
import type { Standing } from '#lib/method/place-of';
import type { TimeAt } from '#lib/method/times';
import { phrase } from '#lib/method/words-at';

interface Asked {
  readonly tokens: readonly Token[];
  readonly clause: Clause;
  readonly place: Place;
  readonly standing: Standing;
  readonly preheats: boolean;
  readonly time: TimeAt | null;
  readonly settings: readonly Setting[];
}

/** Done often or all the time. */
const OFTEN =
  /\b(?:constantly|continuously|continually|often|frequently|regularly|all the time|the whole time|throughout|non-stop|without stopping|keep (?:stirring|whisking|tossing|moving|turning|shaking))\b/;
const SELDOM =
  /\b(?:occasionally|now and then|now and again|from time to time|once|twice|halfway|half-way|half way|midway|every|sometimes)\b/;
const STIRRED = /\b(?:stirring|whisking|tossing|beating|swirling|moving)\b/;
const IN_WATER = /\b(?:boiling|simmering|salted|unsalted|lightly salted|stock|broth|water|milk)\b/;

/**
 * Whether an action takes the hands: whatever is fried, grilled in the open, stirred often or has to be turned to
 * its other side; all that is prepared. What is in an oven, boils, stands or cools runs by itself.
 */
export function handsOf({
  tokens,
  clause,
  place,
  standing,
  preheats,
  time,
  settings,
}: Asked): Hands {
  const text = phrase(tokens, clause.from, clause.next);
  const stirred = STIRRED.test(text) && !SELDOM.test(text);
  const watched = OFTEN.test(text) || stirred || /\bwatching\b/.test(text) || time?.use === 'side';
  if (preheats) return 'by itself';
  switch (place) {
    case 'oven':
    case 'air fryer':
    case 'fridge':
    case 'freezer':
      return 'by itself';
    case 'microwave':
      return /\bbursts?\b|\bblasts?\b|\bintervals?\b|\bspells?\b/.test(text) &&
        /stir|whisk/.test(text)
        ? 'by hand'
        : watched
          ? 'by hand'
          : 'by itself';
    case 'grill':
      return standing.covered ||
        /\bindirect\b|\b(?:lid|hood) (?:closed|down|on|shut)\b|\bclosed (?:lid|hood)\b|\bcovered\b|\bclosed\b/.test(
          text,
        )
        ? 'by itself'
        : 'by hand';
    case 'burner':
      return onBurner(clause, text, watched, standing, settings);
    case 'none':
      if (standing.machine) return OFTEN.test(text) ? 'by hand' : 'by itself';
      if (clause.kind === 'wait' || clause.kind === 'boil' || clause.kind === 'chill')
        return watched ? 'by hand' : 'by itself';
      return clause.kind === 'put' && time !== null ? 'by itself' : 'by hand';
  }
}

function onBurner(
  { kind, base }: Clause,
  text: string,
  watched: boolean,
  standing: Standing,
  settings: readonly Setting[],
): Hands {
  if (watched) return 'by hand';
  if (kind === 'boil' || kind === 'wait' || kind === 'set') return 'by itself';
  if (kind === 'fry' && !(base === 'soften' || base === 'wilt')) return 'by hand';
  if (kind === 'heat' && settings.length > 0) return 'by hand';
  if ((kind === 'heat' || kind === 'fry') && standing.covered) return 'by itself';
  if (kind === 'heat' && base === 'cook') {
    const inWater =
      /\bin (?:[\w-]+ ){0,6}(?:water|stock|broth)\b/.test(text) && IN_WATER.test(text);
    if (inWater || /\bpackets?\b/.test(text)) return 'by itself';
  }
  return 'by hand';
}
