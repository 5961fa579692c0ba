import type { FilmingDay } from '#lib/episode/day-schema';
import type { StepLink } from '#lib/episode/step-schema';
import { UNSAID_DAY, UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';
import { link } from '#seed/demo/shorthand';

const clock = (hour: number, minute = 0): number => hour * 60 + minute;

/** Saturday: three meals as they are really eaten, and home before the ferry's last horn. */
export const DAY: FilmingDay = {
  ...UNSAID_DAY,
  id: 'day-saturday',
  date: '2026-12-12',
  kind: 'asLived',
  startMin: clock(9),
  wrapByMin: clock(18, 30),
  mealGapMin: 180,
  segments: [
    { ...UNSAID_DAY_SEGMENT, id: 'day-intro', segmentId: 'seg-intro' },
    { ...UNSAID_DAY_SEGMENT, id: 'day-skillet', segmentId: 'seg-skillet' },
    { ...UNSAID_DAY_SEGMENT, id: 'day-loaf', segmentId: 'seg-loaf' },
    { ...UNSAID_DAY_SEGMENT, id: 'day-skyr', segmentId: 'seg-skyr' },
    { ...UNSAID_DAY_SEGMENT, id: 'day-outro', segmentId: 'seg-outro' },
  ],
  appointments: [
    {
      id: 'appointment-parcel',
      title: 'Parcel at the door: two new memory cards',
      startMin: clock(11),
      endMin: clock(11, 5),
      hands: true,
    },
  ],
  pins: [
    // The sun clears the breakwater at about twenty past nine.
    { id: 'pin-light', stepId: 'step-intro-hello', notBeforeMin: clock(9, 20), notAfterMin: null },
  ],
};

/** What ties one segment to another. */
export const DAY_LINKS: readonly StepLink[] = [
  link(
    'link-intro-ready',
    'step-intro-set',
    'step-intro-hello',
    {},
    'clean glass before the first word',
  ),
  link(
    'link-intro-first',
    'step-intro-hello',
    'step-skillet-plate',
    {},
    'hello comes before the first plate: the light must match',
  ),
  link(
    'link-outro-eaten',
    'step-skyr-eat',
    'step-outro-slate',
    {},
    'add up what was eaten, not what was meant',
  ),
  link(
    'link-outro-slate',
    'step-outro-slate',
    'step-outro-total',
    { atMost: 10 },
    'read out while the chalk is fresh',
  ),
];
