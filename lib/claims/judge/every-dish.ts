import { cannotSay, type Verdicted } from './verdicted';

/** What a statement comes to of one dish. */
export interface OfDish {
  readonly title: string;
  readonly verdicted: Verdicted;
}

/**
 * One verdict of a statement that is said of each of several dishes: it agrees only if it does of every one, and is off
 * where it is off of any.
 * @example settleEvery([bowls, salad, flatbread]).why // 'Flatbread: 807 calories, …'
 */
export function settleEvery(all: readonly OfDish[]): Verdicted {
  if (all.length === 0) return cannotSay('no dish with ingredients is set up yet');
  const off = all.filter(({ verdicted }) => verdicted.verdict === 'off');
  const [first] = off;
  const whys = (of: readonly OfDish[]) => of.map(({ verdicted }) => verdicted.why).join('; ');
  if (first) {
    const { difference, remark, against } = first.verdicted;
    return { verdict: 'off', why: whys(off), difference, sayInstead: null, remark, against };
  }
  const open = all.find(({ verdicted }) => verdicted.verdict === 'unknown');
  if (open) {
    const { remark, against, why } = open.verdicted;
    return cannotSay(`of every dish? ${open.title}: ${why}`, { remark, against });
  }
  const edge = all.find(({ verdicted }) => verdicted.verdict === 'edge');
  const against = all[0]?.verdicted.against ?? null;
  const verdict = edge ? 'edge' : 'agrees';
  return { verdict, why: whys(all), difference: null, sayInstead: null, remark: null, against };
}
