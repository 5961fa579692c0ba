import type { Mark } from '../words/marks';
import type { Text } from '../words/text';

/** A hedge right before, or with words between that soften nothing: 'at least a solid 40'. */
export function hedgeBefore(
  { marks, language, tokens }: Text,
  begin: number,
): Mark<'hedge'> | undefined {
  let at = begin;
  for (let skips = 0; skips < 3; skips += 1) {
    const mark = marks.before('hedge', at);
    const lead = marks.before('lead', at);
    // 'split over four plates' says no least.
    const serve = marks.before('serve', at);
    if (mark && serve && serve.from < mark.from) return undefined;
    // 'goes up to 68' says no most.
    if (mark && lead && lead.from < mark.from) return undefined;
    // 'per bowl -> 410': an arrow.
    const arrow = marks.before('copula', at);
    if (mark && arrow && arrow.from < mark.from && tokens[mark.from]?.kind === 'mark')
      return undefined;
    const again = marks.before('correct', at);
    if (mark && again && again.from < mark.from) return undefined;
    if (mark) return mark;
    if (language.currencies.has(tokens[at - 1]?.text ?? '')) return undefined;
    const filler = marks.before('filler', at);
    // 'carries over to 65' says no least.
    if (!filler || marks.before('lead', at)) return undefined;
    // 'mozzarella over the six' says no least.
    const the = language.numbers.pointers.has(tokens[filler.from]?.folded ?? '');
    if (the && filler.to - filler.from === 1) return undefined;
    at = filler.from;
  }
  return undefined;
}
