import type { ChapterRow } from './chapter-row';
import type { DraftLine, DraftLink, DraftPortions, From, LeftOut, LeftWhy, Said } from './draft';

/** A dish as a description has it; without a title where nothing names it. */
export interface DescribedDish {
  readonly title: Said | null;
  /** The title is that of a part: the episode's own fits better, where it has one. */
  readonly isPart: boolean;
  readonly lines: readonly DraftLine[];
  readonly portions: DraftPortions | null;
  readonly method: readonly Said[];
}

/** What a description says, in its own order. */
export interface Described {
  readonly hook: Said | null;
  readonly chapters: readonly ChapterRow[];
  readonly dishes: readonly DescribedDish[];
  readonly links: readonly DraftLink[];
  readonly disclosure: Said | null;
  readonly left: readonly LeftOut[];
}

export const UNDESCRIBED: Described = {
  hook: null,
  chapters: [],
  dishes: [],
  links: [],
  disclosure: null,
  left: [],
};

/** Words of a line told at most where it is named. */
const MOST_WORDS = 300;

/** The place of a line in a description. */
export function fromLine(line: number, words: string): From {
  const told = words.length > MOST_WORDS ? `${words.slice(0, MOST_WORDS).trimEnd()}…` : words;
  return { text: 'description', line, startMs: null, words: told };
}

const WHY: Readonly<Record<LeftWhy, string>> = {
  prose: 'No part of a dish was read in it.',
  numbers: 'Numbers about a dish: they are held against its ingredients.',
  allergens: 'Allergens come from labels and from your own word, not from an old description.',
  elsewhere: 'The ingredients are said to stand elsewhere: paste them here, or into the dish.',
  portions: 'No exact number of portions: say it in the dish.',
  amount: 'An amount that is not sure enough to be proposed: add it if it is right.',
  unclear:
    'The name of a dish or an ingredient: say it where it belongs, and see to which dish the lines below it go.',
  link: 'No whole address: it begins with https:// and has at most 400 characters.',
  tooLong: 'This line is too long to be read.',
  full: 'No more fits: a dish holds 400 ingredients, an episode 1,000 of them, 100 segments and 40 links.',
  captions: 'It could not be read as a caption.',
};

/** A line that is left out, with the sentence that says why. */
export function leftOut(why: LeftWhy, from: From, message: string = WHY[why]): LeftOut {
  return { why, from, message };
}
