import { phrasesOf } from './words';

/** The forms of a verb: 'come', 'comes', 'came', 'coming', 'is coming', 'are coming', 'is gonna come'. */
function formsOf([base = '', third = '', past = '', ing = '']: readonly string[]): string[] {
  return [
    base,
    third,
    past,
    ...['', 'is ', 'are ', 'was ', 'were '].map((be) => `${be}${ing}`),
    ...['is gonna', 'is going to', 'are gonna', 'are going to'].map((will) => `${will} ${base}`),
  ];
}

/**
 * Each form of each verb with each of the words behind it.
 * @example conjugated('come comes came coming', 'in at, to') // ['come in at', 'come to', 'comes in at', …]
 */
export const conjugated = (verbs: string, behind = ''): string[] =>
  phrasesOf(verbs)
    .flatMap((verb) => formsOf(verb.split(' ')))
    .flatMap((form) =>
      behind === '' ? [form] : behind.split(',').map((rest) => `${form} ${rest.trim()}`.trim()),
    );

/** Verbs that lead from what is counted to its number, with the words behind them (common practice, no source). */
export const LEADING: readonly string[] = [
  ...conjugated(
    'come comes came coming',
    'in at, out at, to, out to, out as, up to, up at, up as, in, in around, in under, in as, out around, through at, back at, back as',
  ),
  ...conjugated('work works worked working', 'out at, out to, out as, out, out around'),
  ...conjugated('sit sits sat sitting', 'at, on, around, right at, pretty at, nicely at'),
  ...conjugated('land lands landed landing', 'at, on, around, me at, us at, you at'),
  ...conjugated('clock clocks clocked clocking', 'in at, in, in around, up'),
  ...conjugated('weigh weighs weighed weighing', 'in at, in'),
  ...conjugated('ring rings rang ringing', 'in at, up at, up'),
  ...conjugated('end ends ended ending', 'up at, up on, up, up around, up as, up being, up with'),
  ...conjugated('finish finishes finished finishing', 'at, on, up at, up on'),
  ...conjugated('settle settles settled settling', 'at, on'),
  ...conjugated('stand stands stood standing', 'at'),
  ...conjugated('hover hovers hovered hovering', 'at, around'),
  ...conjugated('turn turns turned turning', 'out to be, out at'),
  ...conjugated('run runs ran running', 'at, to, you, out at'),
  ...conjugated('shake shakes shook shaking', 'out to, out at'),
  ...conjugated('tot tots totted totting', 'up to'),
  ...conjugated('add adds added adding', 'up to, up, out to'),
  ...conjugated('top tops topped topping', 'out at'),
  ...conjugated('average averages averaged averaging', ', out at'),
  ...conjugated('total totals totalled totalling, total totals totaled totaling', ', up to, up at'),
  ...conjugated('bring brings brought bringing', 'it to, you to, me to, us to, you, the total to'),
  ...conjugated('take takes took taking', 'you to, me to, us to'),
  ...conjugated('put puts put putting', 'it at, us at, me at, you at, this at, that at'),
  ...conjugated('get gets got getting', 'you to, us to, me to, it to'),
  ...conjugated('give gives gave giving', 'you, us, me, you about'),
];
