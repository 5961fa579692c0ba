import type { ChapterRow } from './chapter-row';
import { titleMeant, titleStems } from './same-title';
import { foldRow } from './text-rows';
import { STAGE, TALK } from './words';

/** A stretch of the cut: a dish of the description by its place there, a dish that only chapters name, or talk. */
export interface Slot {
  readonly of: number | 'unlisted' | 'talk';
  readonly chapter: ChapterRow;
  readonly endMs: number | null;
  /** Chapters of talk that lie within the dish and are no stretch of their own. */
  readonly within: readonly ChapterRow[];
}

/** A dish that a description lists. */
export interface ListedDish {
  /** Null where nothing names it. */
  readonly title: string | null;
  /** Its ingredients in their words. */
  readonly lines: readonly string[];
}

type Role = { of: number | 'unlisted' | 'talk' | 'stage' | 'open'; chapter: ChapterRow };

/**
 * What each chapter is: a dish that the description lists, by its title; talk; a stage of the dish that is being made,
 * which joins it; or a dish that is listed nowhere. Where just as many chapters as dishes are left over they belong
 * together in their order; chapters called after ingredients of the one dish that stands between their neighbours
 * ("Beef and beans", "Eggs" of burritos) are its stages.
 * @param dishes the dishes that the description lists
 * @param lastMs when all of it is over; null where nobody knows
 */
export function chapterSlots(
  chapters: readonly ChapterRow[],
  dishes: readonly ListedDish[],
  lastMs: number | null,
): Slot[] {
  const stems = dishes.map(({ title }) => (title === null ? [] : titleStems(title)));
  const roles = chapters.map((chapter): Role => {
    const dish = titleMeant(chapter.title, stems);
    const folded = foldRow(chapter.title);
    const of =
      dish >= 0 ? dish : TALK.test(folded) ? 'talk' : STAGE.test(folded) ? 'stage' : 'open';
    return { of, chapter };
  });
  settleOpen(roles, dishes);
  settleStages(roles, dishes.length);
  return joined(roles, lastMs);
}

function settleOpen(roles: Role[], dishes: readonly ListedDish[]): void {
  const matched = new Set(roles.flatMap(({ of }) => (typeof of === 'number' ? [of] : [])));
  const open = roles.filter(({ of }) => of === 'open');
  const rest = dishes.flatMap((_, index) => (matched.has(index) ? [] : [index]));
  const single = dishes.length === 1 && matched.size === 0;
  if (single) for (const role of open) role.of = 'stage';
  else if (rest.length === open.length)
    open.forEach((role, index) => (role.of = rest[index] ?? 'unlisted'));
  else settleGaps(roles, dishes, rest);
}

/** Chapters between two dishes that are known, where the description has one dish between the two. */
function settleGaps(roles: Role[], dishes: readonly ListedDish[], rest: readonly number[]): void {
  const known = roles.map(({ of }) => of);
  roles.forEach((role, at) => {
    if (role.of !== 'open') return;
    const before = known.slice(0, at).findLast((of) => typeof of === 'number') ?? -1;
    const after = known.slice(at).find((of) => typeof of === 'number') ?? dishes.length;
    const between = rest.filter((index) => index > Number(before) && index < Number(after));
    const [dish] = between;
    const isStage =
      dish !== undefined &&
      between.length === 1 &&
      isOfIngredients(role.chapter.title, dishes[dish]?.lines ?? []);
    role.of = isStage ? dish : 'unlisted';
  });
}

/** Whether a chapter is called after ingredients of a dish and nothing else. */
function isOfIngredients(title: string, lines: readonly string[]): boolean {
  const named = titleStems(title).filter((stem) => !JOINING.has(stem));
  const foods = new Set(lines.flatMap((line) => titleStems(line)));
  return named.length > 0 && named.every((stem) => foods.has(stem));
}

const JOINING: ReadonlySet<string> = new Set(['and', 'the', 'with', 'more', 'other', 'in']);

/** A stage is of the only dish there is, else of the one before it; before any dish it is talk. */
function settleStages(roles: Role[], dishes: number): void {
  const unlisted = roles.filter(({ of }) => of === 'unlisted').length;
  const onlyOne = dishes + unlisted <= 1;
  const only = unlisted > 0 ? 'unlisted' : dishes > 0 ? 0 : 'unlisted';
  let before: Role['of'] | null = null;
  for (const role of roles) {
    if (role.of === 'stage') role.of = onlyOne ? only : (before ?? 'talk');
    else if (role.of !== 'talk') before = role.of;
    else if (!onlyOne) before = null;
  }
}

function joined(roles: readonly Role[], lastMs: number | null): Slot[] {
  const endOf = (index: number) => {
    const { chapter } = roles[index] ?? {};
    return chapter?.endMs ?? roles[index + 1]?.chapter.startMs ?? lastMs;
  };
  const isOf = (of: Role['of']) => of !== 'talk';
  const kinds = new Set(roles.flatMap(({ of }) => (isOf(of) ? [of] : [])));
  const slots: (Slot & { endMs: number | null; within: ChapterRow[]; stagesOf?: Role['of'] })[] =
    [];
  const seen = new Set<number>();
  const onlyDish =
    kinds.size === 1 &&
    !(
      kinds.has('unlisted') &&
      roles.filter(({ of, chapter }) => of === 'unlisted' && !STAGE.test(foldRow(chapter.title)))
        .length > 1
    );
  roles.forEach(({ of, chapter }, index) => {
    const last = slots.at(-1);
    const endMs = endOf(index);
    const isStage = STAGE.test(foldRow(chapter.title));
    if (last && of !== 'talk' && last.of === of && (of !== 'unlisted' || isStage)) {
      last.endMs = endMs;
      return;
    }
    if (of !== 'talk' && onlyDish) {
      // The only dish goes on after talk in between, which is then within it.
      const at = slots.findLastIndex((slot) => slot.of === of);
      const dish = slots[at];
      if (dish) {
        dish.within.push(...slots.splice(at + 1).map((slot) => slot.chapter));
        dish.endMs = endMs;
        return;
      }
    }
    if (typeof of === 'number' && seen.has(of)) {
      slots.push({ of: 'talk', chapter, endMs, within: [] });
      return;
    }
    if (typeof of === 'number') seen.add(of);
    slots.push({ of: of === 'stage' || of === 'open' ? 'talk' : of, chapter, endMs, within: [] });
  });
  return slots;
}
