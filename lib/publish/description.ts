import { chapterList, type ChapterFault } from '#lib/cut/chapters';
import type { DescriptionForm, DescriptionLayout } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import type { AllergenEntry } from '#lib/publish/allergen-list';
import { blockContext } from '#lib/publish/description/block';
import { BLOCKS } from '#lib/publish/description/blocks';
import { houseLayout } from '#lib/publish/description/layout';
import { apartEnergy, type ApartEnergy } from '#lib/publish/description/notes-block';
import { openNumbers, type OpenNumber } from '#lib/publish/description/open-numbers';
import { whatToDrop, type Drop, type Droppable } from '#lib/publish/description/what-to-drop';
import { render, textLength, type TextLength } from '#lib/publish/document/render';
import { swapTexts } from '#lib/publish/swap-texts';
import { numbersToPublish, type NumbersToPublish } from '#lib/publish/from-lock';

/** A text with what the person should know before pasting. */
export interface Description {
  /** Exactly what is pasted. Line feeds only, no line feed at the end. */
  readonly text: string;
  readonly form: DescriptionForm;
  readonly length: TextLength;
  /** In code points, as `length.codePoints` counts. */
  readonly limit: number;
  readonly fits: boolean;
  /** What was left out of this one text. */
  readonly without: readonly Droppable[];
  /** What to leave out first where it is too long; nothing where it fits. */
  readonly drops: readonly Drop[];
  readonly chapterFaults: readonly ChapterFault[];
  readonly open: readonly OpenNumber[];
  /** Macros and calories that are apart, with and without a reason that is known. */
  readonly apart: readonly ApartEnergy[];
  /** Allergens proposed by rule that wait for the person's word and are left out. */
  readonly unconfirmedAllergens: readonly AllergenEntry[];
}

export interface DescriptionOptions {
  /** The person's house layout if left out, else the usual one. */
  readonly layout?: DescriptionLayout;
  readonly form?: DescriptionForm;
  /** What to leave out of this one text, whatever the layout says. */
  readonly without?: readonly Droppable[];
  /** One text for each correction, the newest first. */
  readonly corrections?: readonly string[];
}

/**
 * The description of an episode, laid out as the person has it: every number from the lock, or from now where there is
 * none. A dish that is open says so and does not block the rest. Pure: the same input gives the same text.
 */
export function descriptionOf(
  publish: NumbersToPublish,
  options: DescriptionOptions = {},
): Description {
  const { form = 'plain', without = [] } = options;
  const { layout, contextWithout, textWithout } = writerOf(publish, options);
  const text = textWithout(without);
  const context = contextWithout(without);
  const length = textLength(text);
  const lengthWithout = (parts: readonly Droppable[]) =>
    textLength(textWithout([...without, ...parts])).codePoints;
  return {
    ...{ text, form, without, length },
    limit: layout.limit,
    fits: length.codePoints <= layout.limit,
    drops: whatToDrop(lengthWithout, layout.limit),
    chapterFaults: chapterList(publish.file.episode).faults,
    open: openNumbers(context),
    apart: apartEnergy(context),
    unconfirmedAllergens: publish.allergens.proposed,
  };
}

/** The text of `descriptionOf` alone, where many are made. */
export function descriptionText(
  publish: NumbersToPublish,
  options: DescriptionOptions = {},
): string {
  return writerOf(publish, options).textWithout(options.without ?? []);
}

function writerOf(publish: NumbersToPublish, options: DescriptionOptions) {
  const { form = 'plain', corrections = [] } = options;
  const layout = houseLayout(options.layout ?? publish.file.creator.layout);
  const hasSwaps = layout.blocks.some(({ kind, shown }) => kind === 'swaps' && shown);
  const swaps = hasSwaps ? swapTexts(publish.file) : [];
  const contextWithout = (parts: readonly Droppable[]) => {
    const left = new Set<string>(parts);
    const kinds = layout.blocks.flatMap(({ kind, shown }) => (shown ? kind : []));
    const shown = new Set(kinds.filter((kind) => !left.has(kind)));
    const dishParts = layout.dish.filter((part) => !left.has(part));
    return blockContext(publish, { shown, dishParts, swaps, corrections });
  };
  const textWithout = (parts: readonly Droppable[]) => {
    const context = contextWithout(parts);
    return render(
      [...context.shown].flatMap((kind) => BLOCKS[kind](context)),
      form,
    );
  };
  return { layout, contextWithout, textWithout };
}

/**
 * The description of an episode of which nothing is locked, or whose lock is not at hand: a draft.
 * @example description(file, undefined, { form: 'markdown' }).text
 */
export function description(
  file: EpisodeFile,
  figures: EpisodeFigures = episodeFigures(file),
  options: DescriptionOptions = {},
): Description {
  return descriptionOf(numbersToPublish(file, null, figures), options);
}
