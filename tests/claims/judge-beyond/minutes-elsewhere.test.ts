import { describe, expect, it } from 'vitest';
import { aContext, aStep, judgeText, ROAST } from './invented-kitchen';

/* Speech has no full stops. What an action takes is common practice, no source; verdicts by MODEL D.1, D.2. */

const minutes = (of: number) => ({ lowS: of * 60, usualS: of * 60, highS: of * 60 });
const oven = { ovenId: null, milliC: 190_000 };
/** A dish whose one step has no words but its heat and time. */
const ONE = aContext([
  {
    ...ROAST,
    title: 'Plum crumble',
    steps: [aStep('heat', '190 °C, 40 mins', { ...minutes(40), oven })],
  },
]);
const TWO = aContext([
  {
    ...ROAST,
    title: 'Trout with barley',
    steps: [
      aStep('trout', 'Bake the trout', { ...minutes(18), oven }),
      aStep('barley', 'Boil the barley', minutes(25)),
    ],
  },
]);

const at = (text: string, context = ONE) => {
  const { verdict, why } = judgeText(text, context, 'roast', 'captions');
  return { verdict, why };
};

describe('minutes of another action than the step at the oven', () => {
  it.each([
    ['whisk that until it is thick takes about six minutes', 'unknown'],
    ['you soften the plums and that takes about eight minutes', 'unknown'],
    ['while that is in the oven simmer the custard for nine minutes', 'unknown'],
    ['it goes in the oven meanwhile the barley five minutes in boiling water', 'unknown'],
    ['with the oven on chop the plums ten minutes', 'unknown'],
    ['simmer it for seven minutes then into the oven', 'unknown'],
    ['it goes in the oven and the plums six minutes in the air\nfryer', 'unknown'],
    // Those of the oven are held against it.
    ['and it goes in the oven for 40 minutes', 'agrees'],
    ['and it goes in the oven for 30 minutes', 'off'],
    ['spread it in the tin and in for 40 minutes', 'agrees'],
    ['spread it in the tin and in for 50 minutes', 'off'],
    ['bake it for 25 minutes', 'off'],
    ['simmer the plums then 30 minutes in the oven', 'off'],
    // The whole dish takes no less than its longest step.
    ['the whole dish takes about ten minutes', 'off'],
    ['whisk it bake it and dinner is ready in ten minutes', 'off'],
  ] as const)('%s: %s', (text, verdict) => {
    expect(at(text)).toMatchObject({ verdict });
  });

  it('asks which step it is, and does not name the one at the oven', () => {
    expect(at('whisk that until it is thick takes about six minutes').why).toBe(
      'can’t say: which step? The words name none',
    );
    expect(at('it goes in the oven meanwhile the barley five minutes in boiling water').why).toBe(
      'can’t say: no step of Plum crumble names the hob',
    );
  });

  it.each([
    ['bake the trout and meanwhile boil the barley for 25 minutes', 'agrees'],
    ['bake the trout and meanwhile boil the barley for 18 minutes', 'off'],
    ['bake the trout and meanwhile toast the nuts for 18 minutes', 'unknown'],
    ['boil the barley meanwhile the trout bakes for 18 minutes', 'agrees'],
  ] as const)('holds it against the step that its own words name: %s: %s', (text, verdict) => {
    expect(at(text, TWO)).toMatchObject({ verdict });
  });
});
