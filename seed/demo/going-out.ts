import type { EpisodePublish } from '#lib/episode/publish-schema';
import { FOOD } from '#seed/demo/reference-foods';
import { SKYR } from '#seed/demo/skyr-pots';
import { MEATLOAF } from '#seed/demo/turkey-meatloaf';

/** Swaps that viewers are likely to ask for, and two pieces that go out beside the episode. */
export const GOING_OUT: EpisodePublish = {
  variants: [
    {
      id: 'variant-crumb',
      segmentId: SKYR.id,
      name: 'Crumb without butter',
      steps: [{ kind: 'food', lineId: 'line-skyr-butter', foodId: FOOD.oliveOil, massMg: 20_000 }],
    },
    {
      id: 'variant-bigger',
      segmentId: SKYR.id,
      name: 'Bigger pots',
      steps: [
        { kind: 'amount', lineId: 'line-skyr-skyr', massMg: 750_000 },
        { kind: 'amount', lineId: 'line-skyr-oats', massMg: 100_000 },
      ],
    },
    {
      id: 'variant-no-worcestershire',
      segmentId: MEATLOAF.id,
      name: 'No Worcestershire sauce',
      steps: [{ kind: 'leaveOut', lineId: 'line-loaf-worcestershire' }],
    },
  ],
  replies: [],
  pieces: [
    {
      id: 'piece-skyr',
      kind: 'clip',
      title: 'Skyr pots in one minute',
      segmentIds: [SKYR.id],
      limit: 600,
    },
    {
      id: 'piece-day',
      kind: 'text',
      title: 'The harbor day in numbers',
      segmentIds: null,
      limit: 800,
    },
  ],
};
