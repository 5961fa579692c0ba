import type { EditRow, EditStanding } from '#lib/overview/edit-standing';
import type { MadeOf } from '#lib/overview/made-of';
import type { SaidKind } from '#lib/overview/said-kinds';
import type { Standing } from '#lib/overview/said-rows';
import type { TextStanding } from '#lib/overview/text-standing';
import type { LastAct } from '../../_components/last-change';
import type { Choice } from '../../../../_ui/form/field';

/** A text that was brought in. */
export interface TextRow extends TextStanding {
  readonly id: string;
  /** Stays the same where a newer text takes its place. */
  readonly slot: string;
  readonly kind: SaidKind;
  readonly name: string;
  readonly rev: number;
}

/** A statement, and where what it was held against stands. */
export interface Row extends EditRow {
  readonly link: { readonly href: string; readonly words: string } | null;
  /** Revision of the reading that was put right. */
  readonly mendRev: number;
}

/** What the page of the edit draws from. */
export interface EditPage extends Omit<EditStanding, 'texts' | 'rows'> {
  readonly rows: readonly Row[];
  readonly episodeId: string;
  readonly title: string;
  readonly texts: readonly TextRow[];
  /** What the episode is made of, and what of it waits for a yes. */
  readonly made: MadeOf;
  /** Everything a number can be about. */
  readonly abouts: readonly Choice[];
  readonly revs: Readonly<Record<string, number>>;
  /** What was done last, to be undone; null where nothing was. */
  readonly last: LastAct | null;
  /** Changes whenever a text does. */
  readonly version: string;
  /** The statement that is chosen at first. */
  readonly at: string | null;
}

/** The texts that statements stand in, as the transcript shows them. */
export interface TranscriptText {
  readonly id: string;
  readonly kind: SaidKind;
  readonly name: string;
  readonly text: string;
  /** Where each line begins in the text. */
  readonly starts: readonly number[];
  /** When each begins, in milliseconds; null where nobody knows it. */
  readonly times: readonly (number | null)[];
}

export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  agrees: 'agrees',
  edge: 'at the edge',
  off: 'off',
  unknown: 'can’t say',
  aside: 'put aside',
};

/** In the order in which they need the person. */
export const STANDINGS = ['off', 'unknown', 'edge', 'agrees', 'aside'] as const;

/** Address of the page with a statement chosen. */
export function atHref(episodeId: string, id: string): string {
  return `/episodes/${episodeId}/edit?at=${encodeURIComponent(id)}#said`;
}
