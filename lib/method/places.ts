import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { Place } from '#lib/method/method-step';
import { word } from '#lib/method/words-at';

/** How a place is named: food is in it, food leaves it, or it is only spoken of. */
export type Naming = 'in' | 'off' | 'named';

/** A place named by a sentence. */
export interface PlaceAt {
  readonly from: number;
  readonly next: number;
  readonly place: Place;
  readonly naming: Naming;
  /** A machine that works by itself though it is on no list (slow cooker, stand mixer). */
  readonly machine: boolean;
  /** Named by the heat under it alone. */
  readonly byHeat: boolean;
}

/** Names of places, the longest first, each with what it is; null for what only looks like one. */
const NAMES: readonly (readonly [string, Place | 'machine' | null])[] = [
  ['slow cooker', 'machine'],
  ['rice cooker', 'machine'],
  ['pressure cooker', 'machine'],
  ['multi cooker', 'machine'],
  ['bread machine', 'machine'],
  ['bread maker', 'machine'],
  ['stand mixer', 'machine'],
  ['mixer on a stand', 'machine'],
  ['standing mixer', 'machine'],
  ['dough hook', 'machine'],
  ['food mixer', 'machine'],
  ['ice cream maker', 'machine'],
  ['ice-cream maker', 'machine'],
  ['crock pot', 'machine'],
  ['dehydrator', 'machine'],
  ['sous vide', 'machine'],
  ['sous-vide', 'machine'],
  ['yogurt maker', 'machine'],
  ['iced water', 'none'],
  ['ice water', 'none'],
  ['ice bath', 'none'],
  ['ice-cold water', 'none'],
  ['cold water', null],
  ['wire rack', 'none'],
  ['cooling rack', 'none'],
  ['chopping board', 'none'],
  ['air fryer', 'air fryer'],
  ['air-fryer', 'air fryer'],
  ['airfryer', 'air fryer'],
  ['dutch oven', 'burner'],
  ['fan oven', 'oven'],
  ['oven gloves', null],
  ['oven glove', null],
  ['oven mitts', null],
  ['oven proof', null],
  ['oven safe', null],
  ['microwave safe', null],
  ['grill pan', 'burner'],
  ['griddle pan', 'burner'],
  ['griddle', 'burner'],
  ['double boiler', 'burner'],
  ['bain-marie', 'burner'],
  ['bain marie', 'burner'],
  ['roasting pan', null],
  ['baking pan', null],
  ['loaf pan', null],
  ['cake pan', null],
  ['sheet pan', null],
  ['muffin pan', null],
  ['tart pan', null],
  ['pie pan', null],
  ['square pan', null],
  ['round pan', null],
  ['springform pan', null],
  ['bundt pan', null],
  ['brownie pan', null],
  ['pizza pan', null],
  ['pan juices', null],
  ['frying pan', 'burner'],
  ['saute pan', 'burner'],
  ['stock pot', 'burner'],
  ['flower pot', null],
  ['yogurt pot', null],
  ['small pots', null],
  ['oven', 'oven'],
  ['broiler', 'grill'],
  ['barbecue', 'grill'],
  ['barbeque', 'grill'],
  ['bbq', 'grill'],
  ['grill', 'grill'],
  ['coals', 'grill'],
  ['charcoal', 'grill'],
  ['microwave', 'microwave'],
  ['hob', 'burner'],
  ['stove', 'burner'],
  ['stovetop', 'burner'],
  ['stove-top', 'burner'],
  ['cooktop', 'burner'],
  ['burner', 'burner'],
  ['skillet', 'burner'],
  ['wok', 'burner'],
  ['saucepan', 'burner'],
  ['casserole', 'burner'],
  ['steamer', 'burner'],
  ['steamer basket', 'burner'],
  ['pan', 'burner'],
  ['pans', 'burner'],
  ['pot', 'burner'],
  ['fryer', 'burner'],
  ['fridge', 'fridge'],
  ['refrigerator', 'fridge'],
  ['freezer', 'freezer'],
];

const ROWS = NAMES.map(([name, place]) => ({ words: name.split(' '), place })).sort(
  (a, b) => b.words.length - a.words.length,
);

const DETERMINERS =
  /^(?:the|a|an|your|its|this|that|same|another|each|one|two|hot|warm|cold|very|preheated|pre-heated|heated|large|small|medium|medium-sized|wide|deep|heavy|heavy-based|heavy-bottomed|non-stick|nonstick|dry|clean|lidded|covered|big|deep-sided|moderate|low|cool|middle|top|bottom|lower|upper|ovenproof|oven-proof|cast-iron|cast|iron|shallow|well-oiled|oiled|lightly|slow|back|of|shelf|rack|domestic|electric|gas|charcoal|outdoor|hottest|part|centre|center|empty|turned-off|switched-off|high|broad|thick-based|,|\d+|inch|cm|-)$/;
const OFF = /^(?:from|off|out)$/;
const IN =
  /^(?:in|into|on|onto|inside|under|underneath|over|to|beneath|using|with|through|at|within|via)$/;

function nameAt(tokens: readonly Token[], at: number) {
  return ROWS.find(({ words }) => words.every((each, index) => word(tokens, at + index) === each));
}

/** How the place at a token is named, by what stands before it. */
function namingAt(tokens: readonly Token[], at: number): Naming {
  let place = at - 1;
  while (place >= 0 && DETERMINERS.test(word(tokens, place))) {
    // 'out of the oven'
    if (word(tokens, place) === 'of' && word(tokens, place - 1) === 'out') return 'off';
    place -= 1;
  }
  const before = word(tokens, place);
  if (OFF.test(before)) return 'off';
  return IN.test(before) ? 'in' : 'named';
}

/** 'over a low heat', 'off the heat', 'reduce the heat': a burner, or no more of one. */
function heatAt(tokens: readonly Token[], at: number): PlaceAt | null {
  if (!/^(?:heat|flame)$/.test(word(tokens, at))) return null;
  const level =
    /^(?:low|medium|high|medium-high|medium-low|gentle|moderate|fierce|lowest|highest|full|strong|moderately|mediumhigh|very)$/;
  let from = at - 1;
  let levels = 0;
  for (; from >= 0; from -= 1) {
    const text = word(tokens, from);
    if (level.test(text)) levels += 1;
    else if (!/^(?:the|a|to|-|–|,|your|very|of|moderately)$/.test(text)) break;
  }
  const before = word(tokens, from);
  const found = {
    from: Math.max(0, from),
    next: at + 1,
    place: 'burner',
    machine: false,
    byHeat: true,
  } as const;
  if (/^(?:off|from)$/.test(before)) {
    // '15 cm from the heat' says how far.
    const far = /^(?:cm|centimetres|inches|inch|in)$/.test(word(tokens, from - 1));
    return far ? null : { ...found, place: 'none', naming: 'off' };
  }
  if (/^(?:indirect|direct)$/.test(before)) return null;
  if (/^(?:turn|switch|take)$/.test(before) && word(tokens, at + 1) === 'off') {
    return { ...found, place: 'none', naming: 'off' };
  }
  if (word(tokens, at + 1) === 'off' || word(tokens, from + 0) === 'off') {
    return { ...found, place: 'none', naming: 'off' };
  }
  if (levels > 0 && /^(?:over|on|at|with|to|in|a|keep|under)$/.test(before))
    return { ...found, naming: 'in' };
  if (/^(?:reduce|lower|raise|increase|down|up|turn)$/.test(before))
    return { ...found, naming: 'in' };
  return levels > 0 ? { ...found, naming: 'in' } : null;
}

/**
 * Every place that a sentence names, in order. Tins that are called pans, ovenproof dishes and gloves are none.
 * `placesOf(tokenize('Remove from the oven'))` → the oven, naming 'off'.
 */
export function placesOf(tokens: readonly Token[]): PlaceAt[] {
  const places: PlaceAt[] = [];
  for (let at = 0; at < tokens.length;) {
    const heat = heatAt(tokens, at);
    const row = heat ? undefined : nameAt(tokens, at);
    if (heat) places.push(heat);
    else if (row && row.place !== null && !isTin(tokens, at, row.place)) {
      const machine = row.place === 'machine';
      places.push({
        from: at,
        next: at + row.words.length,
        place: row.place === 'machine' ? 'none' : row.place,
        naming: namingAt(tokens, at),
        machine,
        byHeat: false,
      });
    }
    at = heat?.next ?? at + (row?.words.length ?? 1);
  }
  return places;
}

/** A 'pan' that goes into the oven: said by its size in inches, or greased and lined. */
function isTin(tokens: readonly Token[], at: number, place: Place | 'machine'): boolean {
  if (place !== 'burner' || !/^pans?$/.test(word(tokens, at))) return false;
  const before = tokens.slice(Math.max(0, at - 4), at).map(({ folded }) => folded);
  if (/^(?:-proof|-safe)$/.test(word(tokens, at + 1))) return true;
  return before.some((text) =>
    /^(?:inch|inches|tin|prepared|lined|greased|buttered|square|round)$/.test(text),
  );
}
