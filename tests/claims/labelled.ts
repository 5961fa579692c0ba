import { readdirSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { NUTRIENT_NAMES } from '#lib/foods/nutrients';
import { MILLIGRAMS, MILLILITRES } from '#lib/units/units';

/** How a number is softened. The number stays as it was said: the hedge alone tells to which side it is open. */
export const HEDGES = [
  'none',
  'about',
  'justOver',
  'under',
  'atLeast',
  'atMost',
  'almost',
  'between',
] as const;

/** What a number is said of; in words in the head of each file. */
export const SCOPES = [
  'dish',
  'whole',
  'portion',
  'each',
  'half',
  'slice',
  'per100g',
  'day',
  'soFar',
  'ingredient',
  'compared',
  'unknown',
] as const;

/** What a statement is counted by, beside its kind. */
export const TAGS = [
  'digits',
  'words',
  'hedge',
  'scope',
  'list',
  'fraction',
  'range',
  'correction',
  'beyond',
] as const;

/** Where a text stands: captions and talking points are spoken, the others are written. */
export const FORMS = ['captions', 'talkingPoint', 'description', 'card', 'title'] as const;

const words = z.string().min(1);
const common = {
  /** The exact words, one unbroken stretch of the text. */
  words,
  /** Title of the dish, where it is another than the one that the context says is talked about. */
  dish: words.optional(),
  tags: z.array(z.enum(TAGS)),
};
const value = {
  low: z.number().nonnegative(),
  high: z.number().nonnegative(),
  hedge: z.enum(HEDGES),
};
const scope = {
  scope: z.enum(SCOPES),
  /** The food that the statement is about, as the text names it. */
  food: words.optional(),
};

const AMOUNT_UNITS = [
  ...Object.keys(MILLIGRAMS),
  ...Object.keys(MILLILITRES),
  'piece',
] as readonly string[];

export const statementSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('nutrient'),
      nutrient: z.enum(NUTRIENT_NAMES),
      ...value,
      unit: z.enum(['kcal', 'kJ', 'g', 'mg', 'µg', 'IU', '%', '%DV']),
      ...scope,
      /** With the scope `compared`: that much less or more than another thing, that share of it, or its own number. */
      against: z.enum(['less', 'more', 'shareOf', 'itsOwn']).optional(),
      ...common,
    }),
    z.strictObject({
      kind: z.literal('amount'),
      ...value,
      unit: z.string().refine((unit) => AMOUNT_UNITS.includes(unit), 'no unit of lib/units'),
      ...scope,
      ...common,
    }),
    z.strictObject({
      kind: z.literal('ovenTemperature'),
      ...value,
      unit: z.enum(['C', 'F', 'gas']),
      fan: z.literal(true).optional(),
      ...common,
    }),
    z.strictObject({
      kind: z.literal('insideTemperature'),
      ...value,
      unit: z.enum(['C', 'F']),
      ...common,
    }),
    z.strictObject({ kind: z.literal('minutes'), ...value, unit: z.literal('min'), ...common }),
    z.strictObject({
      kind: z.literal('portions'),
      ...value,
      unit: z.enum(['portion', 'piece', 'slice']),
      ...common,
    }),
    z.strictObject({
      kind: z.literal('price'),
      ...value,
      unit: z.enum(['USD', 'EUR', 'GBP', 'unknown']),
      ...scope,
      ...common,
    }),
    z.strictObject({ kind: z.literal('readyIn'), ...value, unit: z.literal('min'), ...common }),
    z.strictObject({
      kind: z.literal('claimWord'),
      claim: z.enum(['high', 'source', 'low', 'free', 'noAdded', 'reduced', 'light', 'lean']),
      nutrient: z.enum(NUTRIENT_NAMES).optional(),
      ...common,
    }),
    z.strictObject({ kind: z.literal('foodNamed'), food: words, ...common }),
  ])
  .superRefine((statement, context) => {
    for (const message of breaches(statement)) context.addIssue({ code: 'custom', message });
  });

type Loose = Readonly<Record<string, unknown>> & { readonly tags: readonly string[] };

/** Where the parts of one statement do not fit each other. */
function breaches(statement: Loose): string[] {
  const { low, high, hedge, tags, words: said } = statement;
  const range = low !== undefined && low !== high;
  const scoped = ![undefined, 'dish', 'unknown'].includes(statement.scope as string | undefined);
  const rules: [boolean, string][] = [
    [Number(low ?? 0) <= Number(high ?? 0), 'low is above high'],
    [range === (hedge === 'between'), 'a range has the hedge between, and nothing else has'],
    [range === tags.includes('range'), 'the tag range goes with a range'],
    [tags.includes('hedge') === ![undefined, 'none', 'between'].includes(hedge as string), 'hedge'],
    [tags.includes('scope') === scoped, 'the tag scope goes with a part, a day or another thing'],
    [tags.includes('beyond') === (statement.kind !== 'nutrient'), 'beyond goes with the kind'],
    [!tags.includes('digits') || /[\d½¼¾⅓⅔]/.test(String(said)), 'the tag digits without a digit'],
    [new Set(tags).size === tags.length, 'a tag stands twice'],
    [
      (statement.scope === 'compared') === 'against' in statement || statement.kind !== 'nutrient',
      'against goes with compared',
    ],
    [statement.scope !== 'ingredient' || 'food' in statement, 'the ingredient is not named'],
    [
      low === undefined || ['digits', 'words', 'fraction'].some((tag) => tags.includes(tag)),
      'not said how the number is written',
    ],
  ];
  return rules.filter(([holds]) => !holds).map(([, message]) => `${String(said)}: ${message}`);
}

const textSchema = z.strictObject({
  id: z.string().regex(/^[a-z]+-\d{3}$/),
  form: z.enum(FORMS),
  context: z
    .strictObject({
      dishes: z.array(words).optional(),
      /** The dish that is being talked about, one of the dishes. */
      dish: words.optional(),
      /** Ingredients of that dish; without them no food is labelled as named. */
      ingredients: z.array(words).optional(),
    })
    .optional(),
  text: words,
  statements: z.array(statementSchema),
});

export const labelledSchema = z.strictObject({
  source: words,
  conventions: z.array(words).min(1),
  texts: z.array(textSchema),
});

export type LabelledStatement = z.infer<typeof statementSchema>;
export type LabelledText = z.infer<typeof textSchema>;

/** Names of the files of labelled texts beside this one. */
export function labelledFiles(): string[] {
  return readdirSync(new URL('.', import.meta.url))
    .filter((name) => /^statements-.*\.json$/.test(name))
    .sort();
}

/** A file of invented texts with what they state, by the conventions that stand in its head; throws if it is amiss. */
export function labelled(name: string): z.infer<typeof labelledSchema> {
  const url = new URL(name, import.meta.url);
  return labelledSchema.parse(JSON.parse(readFileSync(url, 'utf8')));
}

/**
 * Where each statement's words stand in the text: the next place after the statement before, or, for words that
 * overlap with those before, the next from their start; null where they do not occur from there on.
 * @example places({ text: '2 eggs, 2 eggs', statements: [{ words: '2 eggs' }, { words: '2 eggs' }] })
 *   // [{ start: 0, end: 6 }, { start: 8, end: 14 }]
 */
export function places({
  text,
  statements,
}: {
  readonly text: string;
  readonly statements: readonly { readonly words: string }[];
}): ({ readonly start: number; readonly end: number } | null)[] {
  let before = { start: 0, end: 0 };
  return statements.map(({ words: said }) => {
    const after = text.indexOf(said, before.end);
    const start = after >= 0 ? after : text.indexOf(said, before.start);
    if (start < 0) return null;
    before = { start, end: start + said.length };
    return before;
  });
}
