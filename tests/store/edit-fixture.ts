import type { EpisodeEdit, Mend } from '#lib/episode/edit-schema';

/** Invented captions in the form of WebVTT (W3C WebVTT, 4.1). */
export const CAPTIONS = `WEBVTT

00:00:10.000 --> 00:00:13.500
The skillet has about 600 calories a bowl.

00:00:13.500 --> 00:00:16.000
No butter in it — “none”, 0 g 🫕.
`;

const mend = (id: string, words: string, put: Mend) => ({
  ...{ id, textId: null, words, before: 'the skillet has about', after: 'a bowl' },
  mend: put,
});

/** An edit that uses every field and every case, of the segments and portions of the fixture's file. */
export const EDIT: EpisodeEdit = {
  texts: [
    { id: 'et-1', kind: 'captions', name: 'cut 1.vtt', text: CAPTIONS },
    { id: 'et-2', kind: 'description', name: '', text: 'Two bowls,\r\n40 g protein.' },
    { id: 'et-3', kind: 'title', name: 'second title', text: '600 CALORIES' },
    { id: 'et-4', kind: 'thumbnail', name: '', text: '30 g' },
    { id: 'et-5', kind: 'card', name: '', text: '4 bowls' },
  ],
  mends: [
    mend('rm-1', '600 calories', { kind: 'nothing' }),
    mend('rm-2', '16 calories', { kind: 'heard', text: '60 calories' }),
    mend('rm-3', '610 calories', {
      ...{ kind: 'about', segmentId: 's-skillet', portionId: 'p-1', scope: 'portion' },
    }),
    mend('rm-4', '620 calories', {
      ...{ kind: 'about', segmentId: 's-intro', portionId: null, scope: 'whole' },
    }),
    // The words of a card are all that it has.
    { ...mend('rm-6', '4 bowls', { kind: 'nothing' }), textId: 'et-5', before: '', after: '' },
    mend('rm-5', '1,900 calories', {
      ...{ kind: 'about', segmentId: null, portionId: null, scope: 'soFar' },
    }),
  ],
  named: [
    { id: 'nf-1', food: 'butter', answer: 'none' },
    { id: 'nf-2', food: 'sour cream', answer: 'leftOff' },
  ],
};
