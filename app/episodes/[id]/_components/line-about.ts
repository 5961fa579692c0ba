import type { Choice } from '../../../_ui/form/field';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { cookMethods, yieldPercent, yieldWords } from '#lib/episode/yield-words';
import type { Food } from '#lib/foods/food';
import { refuseWords } from '#lib/foods/refuse-words';
import { RETENTION_ROWS, RETENTION_SOURCE } from '#lib/foods/retention';
import { measureChoices } from './measure-choices';

/** What an ingredient's form says of its food beside the texts that can be changed. */
export interface LineAbout {
  /** The food whose measures and methods these are. */
  readonly foodId: string;
  readonly measures: readonly Choice[];
  readonly methods: readonly Choice[];
  /** Which yield is used and where it comes from; null where raw and cooked do not differ. */
  readonly cooked: string | null;
  /** What of peel, shell and bone comes off, and when. */
  readonly refuse: string;
  readonly retentions: readonly Choice[];
  readonly retentionSource: string;
}

/** What the form of an ingredient that is there says of it. */
export function lineAbout(line: RecipeLine, food: Food | null): LineAbout {
  return {
    foodId: food?.id ?? '',
    measures: measureChoices(line, food),
    methods: methodChoices(line, food),
    cooked: food && yieldWords(food, line),
    refuse: refuseWords(food),
    retentions: retentionChoices(line.retention),
    retentionSource: RETENTION_SOURCE,
  };
}

/** A food's methods where there is more than one, each with its yields; one that it lost is kept in the list. */
function methodChoices({ cookMethod }: RecipeLine, food: Food | null): readonly Choice[] {
  const names = food ? cookMethods(food) : [];
  const lost = cookMethod !== null && !names.includes(cookMethod);
  if (names.length < 2 && !lost) return [];
  const known = names.map((name) => {
    const of = food?.yields.filter(({ method }) => method === name) ?? [];
    const each = of.map((one) => `${yieldPercent(one)}, ${one.own ? 'yours' : one.source}`);
    return { value: name, words: `${name}: ${[...new Set(each)].join('; ')}` };
  });
  const gone = {
    value: cookMethod ?? '',
    words: `“${cookMethod}”: no cooked weight is known of it`,
  };
  return [
    { value: '', words: 'any: own cooks, else the first' },
    ...known,
    ...(lost ? [gone] : []),
  ];
}

function retentionChoices(code: string | null): readonly Choice[] {
  const lost = code !== null && !RETENTION_ROWS.some((row) => row.code === code);
  return [
    { value: '', words: 'as its food lists them' },
    ...RETENTION_ROWS.map((row) => ({ value: row.code, words: `${row.words} (code ${row.code})` })),
    ...(lost ? [{ value: code, words: `code ${code}, not in the table here` }] : []),
  ];
}
