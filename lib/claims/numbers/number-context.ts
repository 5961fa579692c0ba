import type { UnitRole } from '../language';
import type { NumberContext } from './numbers';
import type { Text } from '../words/text';

const MEASURES: readonly UnitRole['of'][] = ['mass', 'volume', 'container'];

/** What numbers ask of the text around them. */
export function numberContext(text: Text): NumberContext {
  const { marks, language, food, tokens } = text;
  const unitAt = (at: number, of: readonly UnitRole['of'][]) => {
    const role = marks.at('unit', at)?.role;
    return role !== undefined && of.includes(role.of);
  };
  const energy = (at: number) => {
    const noun = marks.at('noun', at)?.role;
    return unitAt(at, ['energy']) || noun?.nutrient === 'energyKcal';
  };
  return {
    words: language.numbers,
    spoken: text.spoken,
    thousands: energy,
    divisible: (at) => unitAt(at, [...MEASURES, 'time', 'money']) || food(at) !== null,
    countable: (at) => {
      const next = language.foods.plain.has(tokens[at]?.folded ?? '') ? at + 1 : at;
      const mark = marks.at('unit', next) ?? marks.at('unit', at);
      if (!mark) return false;
      // 'an hour', 'a minute or two'; 'a minute' alone is a turn of speech.
      const or = language.numbers.either.has(tokens[mark.to]?.folded ?? '');
      const two = or && language.numbers.cardinals.has(tokens[mark.to + 1]?.folded ?? '');
      if (mark.role.of === 'time') return mark.role.unit === 'h' || two;
      if (mark.role.of === 'money') return mark.role.factor >= 1 && mark.from === at;
      return MEASURES.includes(mark.role.of) && (mark.from === at || mark.role.of !== 'mass');
    },
    more: (at) => {
      const role = marks.at('unit', at)?.role;
      return role?.of === 'time' && role.unit === 'h';
    },
    needsNumber: (at) => {
      const mark = marks.at('unit', at);
      if (mark?.role.of !== 'mass') return false;
      const of = marks.at('filler', mark.to)?.to ?? mark.to;
      return marks.at('noun', of) !== undefined || marks.at('noun', mark.to) !== undefined;
    },
  };
}
