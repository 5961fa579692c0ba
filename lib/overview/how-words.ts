import type { Hedge, ReadingStep, Scope, Statement } from '#lib/claims/statement';
import { NUTRIENTS } from '#lib/foods/nutrients';

/** A stage of a reading, on screen. */
export const STAGES: Readonly<Record<ReadingStep['stage'], string>> = {
  number: 'the number',
  hedge: 'how it is softened',
  unit: 'the unit',
  noun: 'what it counts',
  scope: 'of how much',
  dish: 'of which dish',
  correction: 'put right while speaking',
  kind: 'what kind it is',
};

const HEDGES: Readonly<Record<Hedge, string>> = {
  none: 'nothing',
  about: 'about',
  justOver: 'just over',
  under: 'under',
  atLeast: 'at least',
  atMost: 'at most',
  almost: 'almost',
  between: 'a range',
};

const SCOPES: Readonly<Record<Scope, string>> = {
  dish: 'the dish',
  whole: 'all of it',
  portion: 'one portion',
  each: 'one piece',
  half: 'half of it',
  slice: 'one slice',
  per100g: '100 g of it',
  day: 'the day',
  soFar: 'the day so far',
  ingredient: 'one ingredient',
  compared: 'something else',
  unknown: 'a part without a name',
};

const UNITS: ReadonlyMap<string, string> = new Map([
  ['kcal', 'calories'],
  ['%DV', '% of the daily value'],
  ['C', '°C'],
  ['F', '°F'],
  ['gas', 'gas mark'],
  ['min', 'minutes'],
  ['h', 'hours'],
  ['s', 'seconds'],
  ['flOz', 'fl oz'],
  ['piece', 'pieces'],
  ['unknown', 'money'],
  ['degree', 'degrees'],
]);

const KINDS: ReadonlyMap<string, string> = new Map<Statement['kind'], string>([
  ['amount', 'an amount'],
  ['ovenTemperature', 'an oven temperature'],
  ['insideTemperature', 'an inside temperature'],
  ['minutes', 'minutes of a step'],
  ['readyIn', 'the time to the table'],
  ['portions', 'how many it makes'],
  ['price', 'a price'],
  ['freeFrom', 'what is not in it'],
]);

const CLAIMS: ReadonlyMap<string, string> = new Map([
  ['source', 'source of'],
  ['noAdded', 'no added'],
]);

/**
 * What a stage of a reading took words for, in the words of the screen.
 * @example howWords({ stage: 'hedge', as: 'atLeast' }) // 'at least'
 * @example howWords({ stage: 'noun', as: 'energyKcal' }) // 'calories'
 */
export function howWords({ stage, as }: Pick<ReadingStep, 'stage' | 'as'>): string {
  switch (stage) {
    case 'hedge':
      return HEDGES[as as Hedge] ?? as;
    case 'scope':
      return SCOPES[as as Scope] ?? as;
    case 'unit':
      return UNITS.get(as) ?? as;
    case 'noun':
    case 'kind':
      return KINDS.get(as) ?? as.split(' ').map(named).join(' ');
    case 'number':
    case 'dish':
    case 'correction':
      return as;
  }
}

const named = (word: string): string =>
  word in NUTRIENTS ? NUTRIENTS[word as keyof typeof NUTRIENTS].label : (CLAIMS.get(word) ?? word);
