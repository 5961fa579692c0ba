import { lastBefore, sentenceEnd } from '../words/context';
import { isHedge, isSwapped } from './differences';
import type { Quantity, Said } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens in which another thing that was set beside the dish holds on. */
const NEAR = 30;

/** 'ten grams more protein than the regular one'. */
export function moreThan(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  const than = text.marks.at('than', quantity.end);
  const noun = than && text.marks.at('noun', than.to);
  if (!noun) return null;
  const word = text.marks.firstIn('thanWord', noun.to, noun.to + 3);
  if (!word && !setAgainst(text, quantity, before)) return null;
  const { unit } = quantity;
  if (unit !== null && (unit.of !== 'mass' || noun.role.nutrient === 'energyKcal')) return null;
  quantity.end = noun.to;
  const said = unit === null ? noun.role.unit : unit.unit;
  const { nutrient } = noun.role;
  return { kind: 'nutrient', nutrient, unit: said, scope: 'compared', against: than.role.against };
}

/** '200 calories less than the takeaway one', 'compared to the takeaway it is 200 fewer'. */
export function compared(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Partial<Said> | null {
  const than = text.marks.at('than', quantity.end);
  if (!than || isHedge(text, than)) return null;
  const { against } = than.role;
  if (text.marks.firstIn('thanWord', than.to, than.to + 4)) return { scope: 'compared', against };
  return setAgainst(text, quantity, before) ? { scope: 'compared', against } : null;
}

/** Whether another thing was set beside this dish just before: a difference is to that. */
function setAgainst(text: Text, { begin }: Quantity, before: Quantity | undefined): boolean {
  const scope = comparedIn(text, begin - NEAR, begin);
  const times = text.marks.lastIn('times', begin - NEAR, begin);
  const share = times?.role.of === 'noun' && text.marks.firstIn('asWord', times.to, times.to + 3);
  if (share || isSwapped(text, begin)) return true;
  const said = before?.said?.scope === 'compared' && begin - before.end <= NEAR;
  return scope || said;
}

/** Whether another thing was named in a stretch. */
function comparedIn({ marks }: Text, from: number, to: number): boolean {
  for (let at = Math.max(0, from); at < to; at += 1)
    if (marks.at('scope', at)?.role.scope === 'compared') return true;
  return false;
}

/** '23 % DV', '30 % less fat than', '38 percent of the calories come from protein'. */
export function shareOf(text: Text, quantity: Quantity, before: readonly Quantity[]): Said | null {
  const { marks } = text;
  // '26 percent of the day's calories come from fat'
  const energyOfDay = marks.at('noun', quantity.end)?.role.nutrient === 'energyKcal';
  if (quantity.unit?.unit === '%DV' && energyOfDay) quantity.unit = { ...quantity.unit, unit: '%' };
  const daily = ofDaily(text, quantity, before.at(-1));
  if (daily) return daily;
  if (quantity.unit?.unit === '%DV') {
    const { of } = text.language.numbers;
    const behind = of.has(text.tokens[quantity.end]?.folded ?? '')
      ? quantity.end + 1
      : quantity.end;
    const named = marks.at('serveTitle', behind) ? marks.at('noun', behind + 1) : undefined;
    const noun = named ?? marks.at('noun', behind) ?? lastBefore(text, quantity.begin, 'noun', 12);
    const last = before.filter((other) => other.said?.kind === 'nutrient').at(-1)?.said?.nutrient;
    const nutrient = noun?.role.nutrient ?? last;
    return nutrient === undefined ? null : { kind: 'nutrient', nutrient, unit: '%DV' };
  }
  const than = marks.at('than', quantity.end);
  const less = than && marks.at('noun', than.to);
  if (than && less && quantity.unit?.unit === '%') {
    quantity.end = less.to;
    return {
      kind: 'nutrient',
      nutrient: less.role.nutrient,
      unit: '%',
      scope: 'compared',
      against: than.role.against,
    };
  }
  // 'forty one percent protein by calories'
  const first = marks.at('noun', quantity.end);
  const by = first && marks.firstIn('noun', first.to, first.to + 3);
  if (first && by?.role.nutrient === 'energyKcal' && first.role.nutrient !== 'energyKcal') {
    quantity.end = first.to;
    return { kind: 'nutrient', nutrient: first.role.nutrient, unit: '%' };
  }
  const joined = joinedShare(text, quantity, before.at(-1));
  if (joined) return joined;
  const energy = marks.firstIn('noun', quantity.end, quantity.end + 4);
  if (energy?.role.nutrient !== 'energyKcal') return null;
  const end = Math.min(energy.to + 8, sentenceEnd(text, quantity.from));
  const mark = text.tokens.slice(energy.to, end).findIndex(({ kind }) => kind !== 'word');
  const near = before.at(-1);
  const same = near && quantity.begin - near.end <= 2 ? near.noun : null;
  const noun =
    marks.firstIn('noun', energy.to, mark < 0 ? end : energy.to + mark) ??
    (same && { role: same, from: same.from }) ??
    lastBefore(text, quantity.begin, 'noun', 4);
  if (!noun || noun.role.nutrient === 'energyKcal') return null;
  if (text.food(noun.from)) return null;
  quantity.end = energy.to;
  return { kind: 'nutrient', nutrient: noun.role.nutrient, unit: '%' };
}

/** Tokens from a nutrient to the word for the day, and from one share of what a day needs to the next. */
const OF_DAY = 3;

/** 'forty percent of your fibre for the day and twenty one percent of the iron'. */
function ofDaily(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { marks, tokens, language } = text;
  const { end, begin, unit } = quantity;
  const of = language.numbers.of.has(tokens[end]?.folded ?? '');
  const noun = marks.at('noun', end + 2);
  const energy = noun?.role.nutrient === 'energyKcal';
  if (unit?.unit !== '%' || !of || !noun || energy) return null;
  const the = language.numbers.pointers.has(tokens[end + 1]?.folded ?? '');
  if (!the && !marks.at('small', end + 1)) return null;
  const day = marks.firstIn('scope', noun.to, noun.to + OF_DAY);
  const goesOn = before?.said?.unit === '%DV' && begin - before.end <= NEXT_SHARE;
  if (day?.role.scope !== 'day' && !goesOn) return null;
  quantity.end = day?.role.scope === 'day' ? day.to : noun.to;
  return { kind: 'nutrient', nutrient: noun.role.nutrient, unit: '%DV' };
}

/** Tokens from one share of the energy to the next. */
const NEXT_SHARE = 12;

/** '38 percent of the calories come from fat and 27 percent from protein', '31 % of calories protein, 42 % carbs'. */
function joinedShare(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { marks } = text;
  const { end, begin, unit } = quantity;
  const share = before?.said?.unit === '%' && before.said.scope === undefined;
  if (unit?.unit !== '%' || !share || begin - before.end > NEXT_SHARE) return null;
  const noun = marks.at('noun', marks.at('comesFrom', end)?.to ?? end);
  if (!noun || noun.role.nutrient === 'energyKcal' || marks.at('than', noun.to)) return null;
  quantity.end = noun.to;
  return { kind: 'nutrient', nutrient: noun.role.nutrient, unit: '%' };
}

/** Tokens from a nutrient to the share of a daily value that it is. */
const DAILY = 20;

/** 'calcium, they go soft, 310 milligrams, that is thirty one percent of your daily': of the nutrient said last. */
export function sayDailyValues(quantities: readonly Quantity[]): void {
  let last: Quantity | undefined;
  for (const quantity of quantities) {
    const { said, killed, unit, begin } = quantity;
    if (killed !== null) continue;
    const nutrient = last?.said?.nutrient;
    const near = last !== undefined && begin - last.end <= DAILY;
    if (said === null && unit?.unit === '%DV' && near && nutrient !== undefined)
      quantity.said = { kind: 'nutrient', nutrient, unit: '%DV' };
    if (said?.kind === 'nutrient') last = quantity;
  }
}
