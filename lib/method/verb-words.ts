import type { ActionKind } from '#lib/method/method-step';

/**
 * The verbs of written methods in English, British and American, folded (lower case, no accents), by what they
 * ask for. Common practice of written recipes; there is no standard.
 */
const VERBS: Readonly<Record<ActionKind, string>> = {
  oven: 'bake roast oven-bake oven-roast slow-roast blind-bake rebake',
  boil: 'simmer boil blanch poach steam reduce bubble parboil braise stew scald hard-boil soft-boil reboil',
  fry:
    'fry saute sweat sear brown deep-fry shallow-fry stir-fry pan-fry dry-fry griddle scramble wilt render ' +
    'caramelise caramelize soften',
  heat: 'cook heat warm melt toast crisp char reheat finish blister precook preheat pre-heat dry-toast dry-roast smoke',
  grill: 'grill broil barbecue barbeque chargrill',
  airFry: 'air-fry airfry',
  microwave: 'microwave zap',
  chill: 'chill refrigerate',
  freeze: 'freeze refreeze',
  wait:
    'rest stand cool marinate marinade brine soak prove proof rise infuse steep sit leave settle ferment cure ' +
    'hydrate bloom thaw defrost macerate autolyse swell plunge submerge wait relax set firm pickle dry-brine',
  put: 'put place return slide transfer pop move give lay lower slip go hold keep',
  set: 'increase raise',
  check: 'check test measure probe ensure',
  prep:
    'mix stir whisk beat knead fold chop slice peel cut dice grate mash combine add pour season serve spread roll ' +
    'shape toss sprinkle scatter brush spoon rub drizzle arrange line grease remove take drain rinse wash squeeze ' +
    'blend blitz process pulse whip cream sift strain crack crumble tear trim score cover wrap top garnish divide ' +
    'flip baste shake tip lift swirl dunk dip coat dust stuff fill thread skewer press pat zest core halve quarter ' +
    'taste adjust decorate dissolve dot ladle unmould unmold loosen uncover crush grind mince shred julienne flatten ' +
    'pound massage butter flour oil salt tie truss bring turn drop prepare make assemble layer stack pipe glaze ' +
    'ice frost scrape scoop stud pit hull deseed seed stone prick pierce cream smooth work bind break separate ' +
    'discard skim deglaze let allow start begin continue carry resume repeat rotate weigh portion ' +
    'plate open close lock switch tilt push tuck dress moisten thin enrich emulsify whizz puree sieve ' +
    'snip fluff fork dredge pluck debone fillet carve crimp seal dab wipe smear squash stretch punch knock pull hang',
};

const list = (text: string): readonly string[] => text.split(/\s+/).filter((word) => word !== '');

/** In which form a verb stands. */
export type VerbForm = 'base' | 's' | 'ing' | 'ed';

/** A verb as it was found: its base, what it asks for, and its form. */
export interface VerbWord {
  readonly base: string;
  readonly kind: ActionKind;
  readonly forms: readonly VerbForm[];
}

/** Forms that no rule makes. */
const ODD: readonly (readonly [string, string, VerbForm])[] = [
  ['left', 'leave', 'ed'],
  ['stood', 'stand', 'ed'],
  ['sat', 'sit', 'ed'],
  ['risen', 'rise', 'ed'],
  ['frozen', 'freeze', 'ed'],
  ['beaten', 'beat', 'ed'],
  ['brought', 'bring', 'ed'],
  ['laid', 'lay', 'ed'],
  ['given', 'give', 'ed'],
  ['taken', 'take', 'ed'],
  ['ground', 'grind', 'ed'],
  ['cut', 'cut', 'ed'],
  ['set', 'set', 'ed'],
  ['put', 'put', 'ed'],
  ['held', 'hold', 'ed'],
  ['kept', 'keep', 'ed'],
  ['fries', 'fry', 's'],
  ['dries', 'dry', 's'],
];

/** Kinds by verb, where a word stands in two the one that says more. */
const KINDS: ReadonlyMap<string, ActionKind> = new Map(
  (Object.entries(VERBS) as [ActionKind, string][])
    .reverse()
    .flatMap(([kind, words]) => list(words).map((word) => [word, kind] as const)),
);

/** Verbs whose last letter is doubled before an ending, as in 'chopping'. */
const DOUBLES =
  /^(?:(?:un)?(?:chop|cut|set|sit|put|pat|pop|top|tip|dip|wrap|trim|stir|zap|zip|rub|skim|pit|drop|slip|dot|whip|strip|char|stud|thin|snip|tan|dab))$/;

function formsOf(base: string): readonly (readonly [string, VerbForm])[] {
  const stem = base.endsWith('e') && !/(?:ee|ye)$/.test(base) ? base.slice(0, -1) : base;
  const doubled = DOUBLES.test(base) ? `${base}${base.slice(-1)}` : stem;
  const ies = /[^aeiou]y$/.test(base) ? base.slice(0, -1) : null;
  return [
    [base, 'base'],
    [ies === null ? (/(?:s|x|z|ch|sh)$/.test(base) ? `${base}es` : `${base}s`) : `${ies}ies`, 's'],
    [`${ies === null ? doubled : base}ing`, 'ing'],
    [ies === null ? `${doubled}ed` : `${ies}ied`, 'ed'],
  ];
}

/** Every form of every verb. */
export const VERB_FORMS: ReadonlyMap<string, VerbWord> = (() => {
  const found = new Map<string, VerbWord>();
  const add = (word: string, base: string, form: VerbForm): void => {
    const kind = KINDS.get(base) ?? 'prep';
    const known = found.get(word);
    if (known && known.base !== base) return;
    found.set(word, { base, kind, forms: [...(known?.forms ?? []), form] });
  };
  for (const base of KINDS.keys()) for (const [word, form] of formsOf(base)) add(word, base, form);
  for (const [word, base, form] of ODD) add(word, base, form);
  return found;
})();

/** Verbs that are as often the name of a thing or how it looks: after 'and' or a comma what follows decides. */
export const DOUBTFUL = new Set(
  list(
    'brown roast toast top season juice zest cream core mix dry cool mash butter flour oil salt sauce chop steam smoke ' +
      'stuff dust coat shape roll crisp char rest set stand cut heat ice frost grill stone seed pit fork seal work ' +
      'break ground smooth thin warm melt firm braise stew quarter halve fry pickle cure stack layer bind plate press stock',
  ),
);

/** Words before a verb that leave it where it stands. */
export const ADVERBS = new Set(
  list(
    'then now just also next first finally meanwhile again once still simply well always partly further together ' +
      'aside immediately please instead straight uncovered covered very fast low slow',
  ),
);

/** What sets another verb going, whose own minutes are then meant. */
export const CAUSES = new Set(
  list('let leave allow make have bring set continue put return start begin place help'),
);
/** After these a verb in -ing is the action. */
export const GOES_ON = new Set(list('continue keep start begin finish resume stop on'));
