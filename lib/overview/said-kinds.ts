import type { SaidText } from '#lib/claims/judged';

/** Where the viewer meets some words. */
export type SaidKind = SaidText['kind'];

export const KIND_WORDS: Readonly<Record<SaidKind, string>> = {
  captions: 'captions',
  title: 'title',
  thumbnail: 'thumbnail',
  card: 'card',
  description: 'description',
  talkingPoint: 'talking point',
};
