import type { Segment } from '#lib/episode/schema';
import { part, say, shot, step } from '#seed/demo/shorthand';
import { UNSAID_SEGMENT } from '#lib/episode/unsaid';

const TALK = {
  ...UNSAID_SEGMENT,
  kind: 'talk',
  batches: part(1),
  eaten: part(0),
  ate: { kind: 'share' },
  recipe: null,
  perishables: [],
  spareTakes: 0,
  spareScope: 'whole',
  washUpS: 0,
} as const satisfies Partial<Segment>;

export const INTRO: Segment = {
  ...TALK,
  id: 'seg-intro',
  title: 'Good morning from the harbor',
  inFrame: 0,
  outFrame: 1125,
  plannedS: 50,
  recipe: null,
  perishables: [],
  steps: [
    step('step-intro-set', 'Wipe the window, set the camera, check the sound', 'prep', [5, 8, 15]),
    step('step-intro-hello', 'Say hello at the quay window', 'talk', [8, 12, 25], {
      onCamera: true,
      daylight: true,
      note: 'Ferry horn at the full hour: start after it.',
    }),
  ],
  shots: [
    shot('shot-intro-harbour', 'Masts and gulls through the window', null, 'wide, still', 6),
    shot(
      'shot-intro-hello',
      'Hello, with the three empty plates',
      'step-intro-hello',
      'medium',
      34,
    ),
  ],
  talkingPoints: [
    say(
      'say-intro-promise',
      'Three dishes, one oven, and when the lamps come on along the quay I will have eaten [energy, day] with [protein, day] of protein. All of it off this scale and these spoons.',
    ),
    say(
      'say-intro-rule',
      'My one rule: when I do not know a number, I say so. There are a couple of those today. See if you spot them before I own up.',
    ),
  ],
};

export const OUTRO: Segment = {
  ...TALK,
  id: 'seg-outro',
  title: 'What the day adds up to',
  inFrame: 12750,
  outFrame: 13875,
  plannedS: 45,
  recipe: null,
  perishables: [],
  steps: [
    step('step-outro-slate', 'Chalk the day on the slate', 'prep', [4, 6, 10]),
    step('step-outro-total', 'Read out the day and sign off', 'talk', [6, 10, 20], {
      onCamera: true,
      note: 'Lamp on the left; the window is black by now.',
    }),
  ],
  shots: [
    shot('shot-outro-slate', 'The slate, line by line', 'step-outro-slate', 'close, top light', 15),
    shot('shot-outro-bye', 'Sign-off, harbour lights behind', 'step-outro-total', 'medium', 25),
  ],
  talkingPoints: [
    say(
      'say-outro-total',
      'Half a skillet, half a tray, one pot: [energy, day], of that [protein, day] of protein, [carbohydrate, day] of carbs, [fat, day] of fat and [fibre, day] of fiber.',
    ),
    say(
      'say-outro-honest',
      'That is the dishes you saw. The coffee on the pier is between me and the pier.',
    ),
  ],
};
