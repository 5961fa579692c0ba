import type { DescriptionLayout, EpisodePublish } from '#lib/episode/publish-schema';

/** A house layout that is not the one that everybody begins with. */
export const LAYOUT: DescriptionLayout = {
  blocks: [
    { kind: 'title', shown: true },
    { kind: 'dishes', shown: true },
    { kind: 'chapters', shown: false },
  ],
  dish: ['portions', 'ingredients'],
  limit: 3000,
};

/** What goes out with every field and every case, of the segments, ingredients and foods of the fixture's file. */
export function publishOf(of: {
  readonly segmentId: string;
  readonly talkId: string;
  readonly lineId: string;
  readonly foodId: string;
}): EpisodePublish {
  const { segmentId, talkId, lineId, foodId } = of;
  return {
    variants: [
      {
        ...{ id: 'v-1', segmentId, name: 'bigger day' },
        steps: [
          { kind: 'amount', lineId, massMg: 250_000 },
          { kind: 'add', foodId, massMg: 30_000, state: 'asIs' },
        ],
      },
      {
        ...{ id: 'v-2', segmentId, name: 'no “dairy”' },
        steps: [
          { kind: 'food', lineId, foodId, massMg: null },
          { kind: 'food', lineId, foodId, massMg: 12_500 },
          { kind: 'leaveOut', lineId },
        ],
      },
    ],
    replies: [
      {
        ...{ id: 'r-1', at: '2026-11-20T18:30:00.000Z', comment: 'I get 712 <kcal>.\nWhy?' },
        ...{ nutrient: 'energyKcal', number: 712.5, segmentId, slip: 'cooked-for-raw' },
        text: 'You are close.',
      },
      {
        ...{ id: 'r-2', at: '2026-11-21T18:30:00.000Z', comment: 'Nope' },
        ...{ nutrient: null, number: null, segmentId: null, slip: null, text: '' },
      },
    ],
    pieces: [
      { id: 'p-a', kind: 'clip', title: 'One bowl', segmentIds: [segmentId, talkId], limit: 100 },
      { id: 'p-b', kind: 'text', title: 'The day', segmentIds: null, limit: 280 },
    ],
  };
}
