import { actWords } from '#lib/overview/change-words';
import type { Act, Names } from '#lib/store/read-episode-changes';
import { localMoment } from '#lib/units/local-date';

/** An act of the journal as a page shows it. */
export interface ToldAct {
  readonly groupId: string;
  readonly label: string;
  readonly when: string;
  readonly words: readonly string[];
  /** Whether it can be undone: what was kept beside a refused form, or entered on the day, cannot. */
  readonly undoable: boolean;
}

/** Kept as it was, whatever comes after. */
const STANDS = new Set(['Draft', 'DayEvent']);

/** Acts as a page lists them: those that say something, and what was kept of one refusal once. */
export function listed(acts: readonly ToldAct[]): readonly ToldAct[] {
  return acts.filter(({ words, undoable }, index) => {
    const again = !undoable && acts[index - 1]?.words.join().startsWith(words.join());
    return words.length > 0 && !again;
  });
}

/** An act in words, by the kitchen's clock and the region's units. */
export function toldAct(
  act: Act,
  names: Names,
  { region, zone }: { readonly region: 'US' | 'EU'; readonly zone: string },
): ToldAct {
  return {
    groupId: act.groupId,
    label: act.label,
    when: localMoment(act.at, zone),
    words: actWords(act.lines, { names, region, zone }),
    undoable: act.lines.some(({ entity }) => !STANDS.has(entity)),
  };
}
