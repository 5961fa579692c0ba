import type { BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { meaningOf, settle, type Meaning } from '#lib/claims/judge-beyond/meanings';
import { plain } from '#lib/claims/judge-beyond/number-words';
import {
  countsCalled,
  portionCounts,
  type PortionCount,
} from '#lib/claims/judge-beyond/portion-counts';
import { cannotSay, type Verdicted } from '#lib/claims/judge/verdicted';
import { toldPortions } from '#lib/claims/judge-beyond/told-portions';
import { numberWords, saidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import type { AmountContext } from '#lib/episode/context';

type Portions = Statement & { readonly kind: 'portions' };

/**
 * How many portions, pieces or slices are said, held against the dish’s portions. Where the dish is made several times,
 * both one making and all of them may be meant.
 */
export function judgePortions(
  statement: Portions,
  { dish }: BeyondDish,
  amounts: AmountContext,
): Verdicted {
  const counts = countsCalled(portionCounts(dish.recipe, amounts), statement.unit);
  if (counts.length === 0) return byTitle(statement, dish);
  const batches = dish.batches.num / dish.batches.den;
  const makings = batches === 1 || batches === 0 ? [1] : [1, batches];
  const meanings = counts.flatMap((each) =>
    makings.map((times) => held(statement, dish.id, each, times)),
  );
  return settle(meanings, 'which portions?');
}

/** A dish without portions whose own title says for how many it is: another number cannot be, the same proves nothing. */
function byTitle(statement: Portions, dish: BeyondDish['dish']): Verdicted {
  const told = statement.unit === 'portion' ? toldPortions(dish.title) : null;
  const cause = `${dish.title} has no portions whose number is known`;
  if (told === null) return cannotSay(cause);
  const range = { value: told, low: told, high: told };
  const said = saidInterval(statement, { spoken: false, half: () => 0, about: () => 1 });
  const meaning = meaningOf(said, statement, range, () => ({
    why: `your dish is for ${told} by its title: “${dish.title}”`,
    called: `for ${told}`,
    sayInstead: withNoun(`${told}`, statement, told),
    apart: (distance, above) =>
      `${plain(distance)} ${above ? 'more' : 'fewer'} than its title says`,
    against: { kind: 'portions', segmentId: dish.id },
  }));
  return meaning.verdict === 'off' ? settle([meaning], 'which portions?') : cannotSay(cause);
}

/** The right number with the noun that was said, or what the parts are called: '5 portions'. */
function withNoun(makes: string, statement: Portions, value: number): string {
  const { words, unit, low, high } = statement;
  const number = numberWords(statement);
  const noun = words.startsWith(number) ? words.slice(number.length).trim() : '';
  const one = value === 1;
  const same = noun !== '' && (low === 1 && high === 1) === one;
  return `${makes} ${same ? noun : `${unit}${one ? '' : 's'}`}`;
}

function held(
  statement: Portions,
  segmentId: string,
  { name, count, exact }: PortionCount,
  times: number,
): Meaning {
  const said = saidInterval(statement, {
    spoken: false,
    half: (digit) => (exact ? 0 : digit),
    about: () => 1,
  });
  const { value, low, high } = count;
  const range = { value: value * times, low: low * times, high: high * times };
  return meaningOf(said, statement, range, () => {
    const makes = `${exact ? '' : 'about '}${plain(range.value)}`;
    const made = times === 1 ? '' : `, made ${plain(times)} times`;
    return {
      why: `your dish makes ${makes}: “${name}”${made}`,
      called: `${makes} (“${name}”${made})`,
      sayInstead: withNoun(makes, statement, range.value),
      apart: (distance, above) =>
        `${plain(distance)} ${above ? 'more' : 'fewer'} than your portions`,
      against: { kind: 'portions', segmentId },
    };
  });
}
