import type { BeyondDish, BeyondPlace } from '#lib/claims/judge-beyond/beyond-context';
import { amountsOf, stateSaid, type SaidState } from '#lib/claims/judge-beyond/amount-states';
import {
  by,
  everyPart,
  partsOf,
  type AmountStatement as Amount,
  type Part,
} from '#lib/claims/judge-beyond/amount-parts';
import { amountSteps } from '#lib/claims/judge-beyond/amount-steps';
import { unitText } from '#lib/claims/judge-beyond/amount-words';
import { withAsides } from '#lib/claims/judge-beyond/amount-asides';
import { isCounted, lineRanges } from '#lib/claims/judge-beyond/line-ranges';
import { matchingLines } from '#lib/claims/judge-beyond/matching-lines';
import { meaningOf, settle, type Meaning } from '#lib/claims/judge-beyond/meanings';
import { pieceCause } from '#lib/claims/judge-beyond/piece-kinds';
import { likelyText, plain } from '#lib/claims/judge-beyond/number-words';
import { cannotSay, plainly, worded, type Verdicted } from '#lib/claims/judge/verdicted';
import type { HeldAgainst } from '#lib/claims/judged';
import { saidInterval, type LikelyRange } from '#lib/claims/said-interval';
import type { AmountContext } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { LineAmount } from '#lib/episode/line-amount';
import { onceFor } from '#lib/claims/once-for';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { isMassUnit, MILLIGRAMS } from '#lib/units/units';

/** How much of something there is, and where that is from. */
interface Known {
  readonly ranges: readonly LikelyRange[];
  /** “on your scale”, “in your ingredients”. */
  readonly from: string;
  readonly name: string;
  readonly against: HeldAgainst;
}

/**
 * An amount of a food held against the ingredient whose name fits: what was weighed wins over what was planned; several
 * ingredients of that name count together. An amount without a food is of the finished dish, or of one portion of it.
 */
export function judgeAmount(
  statement: Amount,
  on: BeyondDish,
  { text, spoken }: Pick<BeyondPlace, 'text' | 'spoken'>,
  amounts: AmountContext,
): Verdicted {
  const { dish } = on;
  const parts = partsOf(statement, on, amounts);
  if (parts === null) return cannotSay('of how much of it?');
  if (parts.length === 0) return cannotSay(`${dish.title} has no portions whose number is known`);
  if (statement.food === undefined) return ofFinished(statement, on, spoken, amounts, parts);
  const lines = matchingLines(statement.food, dish, amounts);
  const [line] = lines;
  if (!line) return cannotSay(`no ingredient of ${dish.title} is called ${statement.food}`);
  const state = stateSaid(statement, text);
  const known = lines.filter((each) => amountsOf(dish.recipe, amounts)(each).inState(state));
  const [only, ...more] = known;
  if (!only) {
    const names = lines.map((each) => each.text).join(' and ');
    const against = { kind: 'line', segmentId: dish.id, lineId: line.id } as const;
    return cannotSay(`no ${state} weight is known of ${names}`, { against });
  }
  const vessel =
    statement.unit === 'piece' &&
    known.map((each) => pieceCause(statement.words, each)).find((cause) => cause !== null);
  if (vessel) {
    return cannotSay(vessel, { against: { kind: 'line', segmentId: dish.id, lineId: only.id } });
  }
  const held = (said: Amount, of: readonly Part[]) =>
    more.length > 0
      ? ofSeveral(said, on, spoken, amounts, { lines: known, parts: of, state })
      : ofLine(said, on, spoken, amounts, { line: only, parts: of, state });
  const asItStands = held(statement, parts);
  return withAsides(asItStands, statement, text, {
    times: (by) =>
      held({ ...statement, low: statement.low * by, high: statement.high * by }, parts),
    share: ({ times, words }) => held(statement, [by(1 / times, words)]),
    each: () => {
      const every = everyPart(on, amounts);
      return every.length > 0 ? held(statement, every) : null;
    },
  });
}

/** The parts that an amount may be of, and of which state of the food it is said. */
interface InState {
  readonly parts: readonly Part[];
  readonly state: SaidState;
}

function ofLine(
  statement: Amount,
  on: BeyondDish,
  spoken: boolean,
  amounts: AmountContext,
  { line, parts, state }: InState & { readonly line: RecipeLine },
): Verdicted {
  const { recipe } = on.dish;
  const pieces = statement.scope === 'each' ? piecesOf(line) : null;
  if (statement.scope === 'each' && pieces === null) {
    return cannotSay(`how many of ${line.text} are there?`);
  }
  const divided = pieces === null ? parts : [by(pieces, 'one of them')];
  const against = { kind: 'line', segmentId: on.dish.id, lineId: line.id } as const;
  const held = (known: Omit<Known, 'against' | 'name'>) =>
    meaningsOf(statement, spoken, { ...known, against, name: line.text }, divided);
  const ranges = (amount: Parameters<typeof lineRanges>[1]) =>
    lineRanges(line, amount, statement, amounts);
  const { weighed, cooked, written, eaten, inState } = amountsOf(recipe, amounts)(line);
  const used = held({
    ranges: ranges(eaten),
    from: weighed ? SCALE[measuredIn(statement.unit)] : 'in your ingredients',
  });
  const cookedHeld = cooked ? held({ ranges: ranges(cooked), from: 'cooked, on your scale' }) : [];
  const asCooked = inState(state) !== eaten;
  const asSaid = asCooked ? cookedHeld : used;
  if (asSaid.length === 0) {
    return cannotSay(`${line.text} is not known in ${unitText(statement.unit, 2)}`, { against });
  }
  const verdict = settle(asSaid, 'which of these?');
  if (statement.unit === 'piece' && verdict.verdict !== 'agrees' && !isCounted(line)) {
    return cannotSay(`${line.text} is known by weight, and nobody has said what one piece weighs`, {
      against,
    });
  }
  if (asCooked) return verdict;
  if (verdict.verdict !== 'off') return verdict;
  if (state === null && cookedHeld.some((each) => each.verdict !== 'off')) {
    return cannotSay(`raw or cooked? ${verdict.why}; ${cookedHeld[0]?.why ?? ''}`, {
      against,
      remark: 'toConfirm',
    });
  }
  if (!weighed) return verdict;
  const planned = held({ ranges: ranges(written), from: 'planned' });
  const wasPlanned = planned.some((each) => each.verdict === 'agrees');
  return wasPlanned
    ? worded(verdict.verdict, () => ({
        ...plainly(verdict),
        why: `${verdict.why}; what was said had been planned`,
      }))
    : verdict;
}

/** What was weighed is in grams; in cups it follows from them, and pieces are counted. */
const SCALE = {
  mass: 'on your scale',
  volume: 'by your scale',
  piece: 'in your ingredients',
} as const;
const measuredIn = (unit: Amount['unit']) =>
  unit === 'piece' ? 'piece' : isMassUnit(unit) ? 'mass' : 'volume';

/** How many pieces an ingredient is, where it is counted exactly. */
function piecesOf({ quantity, unit }: RecipeLine): number | null {
  if (!quantity || unit !== 'piece') return null;
  const [low, high] = [quantity.low, quantity.high].map(({ num, den }) => num / den);
  return low !== undefined && low === high && low > 0 ? low : null;
}

/** Several ingredients of one name: all of them together; where one alone would fit, nobody knows which was meant. */
function ofSeveral(
  statement: Amount,
  { dish }: BeyondDish,
  spoken: boolean,
  amounts: AmountContext,
  { lines, parts, state }: InState & { readonly lines: readonly RecipeLine[] },
): Verdicted {
  const rangesIn = (line: RecipeLine, amount: LineAmount | null) =>
    amount ? lineRanges(line, amount, statement, amounts) : [];
  const names = lines.map(({ text }) => text).join(' and ');
  const known = lines.map((line) => ({
    line,
    ranges: rangesIn(line, amountsOf(dish.recipe, amounts)(line).inState(state)),
  }));
  if (statement.scope === 'each' || known.some(({ ranges }) => ranges.length !== 1)) {
    return cannotSay(`which one? ${names}`);
  }
  const first = lines[0];
  if (!first) return cannotSay('which one?');
  const against = { kind: 'line', segmentId: dish.id, lineId: first.id } as const;
  const sum = (of: (range: LikelyRange) => number) =>
    known.reduce((total, { ranges }) => total + ranges.reduce((all, each) => all + of(each), 0), 0);
  const together = {
    value: sum(({ value }) => value),
    low: sum(({ low }) => low),
    high: sum(({ high }) => high),
  };
  const from = 'together in your ingredients';
  const all = meaningsOf(
    statement,
    spoken,
    { ranges: [together], from, name: names, against },
    parts,
  );
  const single = known.flatMap(({ line, ranges }) =>
    meaningsOf(
      statement,
      spoken,
      {
        ranges,
        from: 'in your ingredients',
        name: line.text,
        against: { ...against, lineId: line.id },
      },
      parts,
    ),
  );
  const summed = settle(all, 'which one?');
  const alone = single.some(({ verdict }) => verdict !== 'off');
  return summed.verdict === 'off' && alone ? settle([...all, ...single], 'which one?') : summed;
}

const finishedOf = onceFor((recipe: Recipe, amounts: AmountContext) =>
  finishedWeight(recipe, amounts),
);

/** The weight of the finished dish, or of a part of it. */
function ofFinished(
  statement: Amount,
  { dish }: BeyondDish,
  spoken: boolean,
  amounts: AmountContext,
  parts: readonly Part[],
): Verdicted {
  if (!isMassUnit(statement.unit)) return cannotSay('of what?');
  const grams = dish.recipe.portions.filter(({ kind }) => kind === 'mass');
  const finished = finishedOf(dish.recipe, amounts);
  if (!finished) {
    const cause = grams.length > 0 ? 'and portions by grams are held against it' : '';
    return cannotSay(`${dish.title} has no finished weight ${cause}`.trimEnd());
  }
  const per = MILLIGRAMS[statement.unit].valueOf();
  const { value, low, high } = finished.interval;
  const range = { value: value / per, low: low / per, high: high / per };
  const from = finished.basis === 'weighed' ? 'on your scale' : 'by its cited change of weight';
  const against = { kind: 'portions', segmentId: dish.id } as const;
  const known = { ranges: [range], from, name: dish.title, against };
  return settle(meaningsOf(statement, spoken, known, parts), 'which portions?');
}

function meaningsOf(
  statement: Amount,
  spoken: boolean,
  { ranges, from, name, against }: Known,
  parts: readonly Part[],
): Meaning[] {
  const { unit } = statement;
  const said = saidInterval(statement, amountSteps(unit, spoken));
  return ranges.flatMap((range) =>
    parts.map((part) => {
      const of = {
        value: range.value / part.by.value,
        low: range.low / part.by.high,
        high: range.high / part.by.low,
      };
      return meaningOf(said, statement, of, () => {
        const text = `${plain(of.value)} ${unitText(unit, of.value)}`;
        const likely = likelyText(of.low, of.high);
        const spread = likely === null ? '' : `, ${likely},`;
        const each = part.name === '' ? '' : `, ${part.name}`;
        return {
          why: `${name}: ${text}${spread} ${from}${each}`,
          called: `${text} ${from}${each}`,
          sayInstead: text,
          apart: (distance, above) =>
            `${plain(distance)} ${unitText(unit, distance)} ${above ? 'more' : 'less'} than ${from}`,
          against,
        };
      });
    }),
  );
}
