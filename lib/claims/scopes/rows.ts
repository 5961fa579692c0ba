import { atOrBehind } from '../words/at-or-behind';
import type { Mark } from '../words/marks';
import type { Quantity } from '../numbers/quantity';
import { isDescribed, type Mention } from './scope-mentions';
import { followedByCopula } from '../words/followed-by-copula';
import { only, type Text } from '../words/text';

/** Tokens between a number and the part it is said of. */
export const GAP = 5;

/** Tokens from one number of a row to the next, with an aside between. */
const ROW = 20;

/** Whether a word draws a conclusion between; one that gives a reason ends no row. */
function concludes({ marks }: Text, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1)
    if (marks.at('so', at) && !marks.at('reason', at)) return true;
  return false;
}

/** Whether a number goes on with the row of the one before. */
export function sameRow(text: Text, last: Quantity, next: Quantity): boolean {
  if (next.begin - last.end > ROW || concludes(text, last.end, next.begin)) return false;
  const blank = text.tokens
    .slice(last.end, next.begin)
    .filter(({ kind }) => kind === 'line').length;
  if (blank > 1) return false;
  const words = ['joiner', 'filler', 'hedge', 'noun', 'copula'] as const;
  const stop = text.tokens.slice(last.end, next.begin).findIndex(({ text: mark }) => mark === '.');
  if (
    stop >= 0 &&
    stop < 3 &&
    only(text, last.end, last.end + stop, words) &&
    only(text, last.end + stop + 1, next.begin, words)
  )
    return true;
  return (
    last.sentence === next.sentence ||
    only(text, last.end, next.begin, ['joiner', 'filler', 'hedge']) ||
    blank === 1
  );
}

/** Whether somebody does something between a number and a part: 'and I filmed'. */
function isOwnClause({ marks, tokens, language }: Text, { end }: Quantity, to: number): boolean {
  for (let at = end; at + 1 < to; at += 1) {
    const joined = marks.at('joiner', at) !== undefined && tokens[at]?.kind === 'word';
    const person = language.claims.doers.has(tokens[at + 1]?.folded ?? '');
    if (joined && person && !marks.at('copula', at + 1)) return true;
  }
  return false;
}

/** Whether the part is said of the numbers before it. */
export function isBehind(
  text: Text,
  mark: Mark<'scope'>,
  last: Quantity | undefined,
  all: readonly Quantity[],
): boolean {
  if (!last || mark.role.link === 'ahead') return false;
  const { marks, tokens } = text;
  // 'eighty eight carbs and I'm gonna be honest I had two of them'
  if (mark.role.scope === 'unknown' && marks.before('eat', mark.from)) return false;
  // '17 fat and I filmed the whole thing', 'and the entire batch weighed two kilos': words of their own.
  if (marks.at('weigh', mark.to) ?? marks.at('weigh', mark.to + 1)) return false;
  if (isOwnClause(text, last, mark.from)) return false;
  // 'seven hundred and four. that is calories for the whole wok': right behind the noun that was said afterwards.
  const noun = last.noun && last.noun.from >= last.end ? last.noun.to : last.end;
  const gap = mark.from - (noun <= mark.from ? noun : last.end);
  const { link } = mark.role;
  const right =
    gap === 0 &&
    (link === 'behind' || link === 'counted' || marks.at('which', mark.to) !== undefined);
  if (!right && (followedByCopula(text, mark.to) || isDescribed(text, mark))) return false;
  if (gap < 0 || gap > 14) return false;
  if (gap === 0) return true;
  const next = atOrBehind(all, mark.to);
  const other =
    text.sentences.of[mark.from] !== last.sentence && tokens[mark.from - 1]?.kind !== 'line';
  if (other && next && next.said !== null && next.begin - mark.to <= 4) return false;
  const runsOn =
    next !== undefined &&
    next.begin - mark.to <= 2 &&
    only(text, mark.to, next.begin, ['joiner', 'copula', 'hedge', 'filler', 'so']);
  const parted = tokens
    .slice(last.end, mark.from)
    .some(({ text: word, kind }) => kind === 'line' || /^[,.;:|]$/.test(word));
  // 'and now that's for the full batch remember'
  const word = marks.lastIn('so', last.end, mark.from);
  const that = word && only(text, word.to, mark.from, ['which', 'copula', 'small', 'filler']);
  const alone = that && word.to < mark.from && (next === undefined || next.begin - mark.to > GAP);
  const so = word !== undefined && !alone;
  if (runsOn && (parted || so || marks.firstIn('joiner', last.end, mark.from))) return false;
  if (so) return false;
  if (gap <= GAP) return true;
  return !runsOn && mark.role.link === 'free' && next === undefined;
}

/** 'per 100 g / per portion: 130 / 410': heads of columns, of which the numbers are nobody can say. */
export function isTable(
  text: Text,
  before: Mention | null,
  { mark, scope }: Mention,
  row: readonly Quantity[],
): boolean {
  if (!before || before.scope === scope || text.spoken) return false;
  const { to } = before.mark;
  const behind = row.at(-1);
  if (behind && behind.end > before.mark.from - GAP) return false;
  const end = text.tokens[mark.to]?.text === ')' ? mark.to + 1 : mark.to;
  const heads = followedByCopula(text, end) || text.tokens[end]?.kind === 'line';
  return to < mark.from && only(text, to, mark.from, ['joiner']) && heads;
}
