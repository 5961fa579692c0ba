import 'server-only';
import type { Prisma } from '#db/generated/sqlite/client';
import { isLineOpen } from '#lib/overview/episode-facts';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';

/** An episode in the list of a season, with the facts that its stage is derived from. */
export interface SeasonEpisode {
  readonly id: string;
  readonly rev: number;
  readonly title: string;
  readonly publishOn: string | null;
  /** Dates of its filming days in order. */
  readonly filmingDates: readonly string[];
  readonly segments: number;
  readonly dishes: number;
  readonly lines: number;
  /** Ingredients without a food, or with neither grams, an amount nor a reading. */
  readonly openLines: number;
  /** Segments that have a time in the cut. */
  readonly timedSegments: number;
  /** Whether a description of it was copied with a lock. */
  readonly copied: boolean;
}

const LINES = {
  where: ALIVE,
  select: {
    foodId: true,
    madeFromId: true,
    lowNum: true,
    plannedMg: true,
    shares: { where: { ...ALIVE, weighing: ALIVE }, select: { id: true }, take: 1 },
  },
} satisfies Prisma.Recipe$linesArgs;

const COUNTED = {
  id: true,
  rev: true,
  title: true,
  publishOn: true,
  segments: {
    where: ALIVE,
    select: { inFrame: true, recipe: { select: { deletedAt: true, lines: LINES } } },
  },
  days: { where: { ...ALIVE, day: ALIVE }, select: { day: { select: { date: true } } } },
} satisfies Prisma.EpisodeSelect;

/** Episodes without a date first, then by date, the latest first. `after` is the last id of the page before. */
export async function readSeason(
  of: PageOf = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Page<SeasonEpisode>> {
  const found = await database().episode.findMany({
    where: { creatorId, ...ALIVE, ...(await beyond(of.after)) },
    orderBy: [{ publishOn: { sort: 'desc', nulls: 'first' } }, { id: 'desc' }],
    take: wanted(of),
    select: COUNTED,
  });
  const page = pageOf(found, of);
  const copied = await copiedOf(page.rows.map((row) => row.id));
  return { ...page, rows: page.rows.map((row) => seasonEpisode(row, copied)) };
}

async function beyond(after: string | undefined): Promise<Prisma.EpisodeWhereInput> {
  if (after === undefined) return {};
  const last = await database().episode.findUnique({
    where: { id: after },
    select: { publishOn: true },
  });
  const publishOn = last?.publishOn ?? null;
  const sameDate = { publishOn, id: { lt: after } };
  const later =
    publishOn === null ? { publishOn: { not: null } } : { publishOn: { lt: publishOn } };
  return { OR: [sameDate, later] };
}

async function copiedOf(ids: string[]): Promise<ReadonlySet<string>> {
  const locks = await database().numbersLock.findMany({
    where: { ...ALIVE, episodeId: { in: ids }, published: { some: ALIVE } },
    select: { episodeId: true },
    distinct: ['episodeId'],
  });
  return new Set(locks.map((lock) => lock.episodeId));
}

function seasonEpisode(
  row: Prisma.EpisodeGetPayload<{ select: typeof COUNTED }>,
  copied: ReadonlySet<string>,
): SeasonEpisode {
  const { id, rev, title, publishOn, segments } = row;
  const recipes = segments.flatMap(({ recipe }) => (recipe?.deletedAt === null ? [recipe] : []));
  const lines = recipes.flatMap((recipe) => recipe.lines);
  const open = lines.filter((line) =>
    isLineOpen({
      hasFood: line.foodId !== null || line.madeFromId !== null,
      hasAmount: line.plannedMg !== null || line.lowNum !== null,
      isWeighed: line.shares.length > 0,
    }),
  );
  return {
    id,
    rev,
    title,
    publishOn,
    filmingDates: row.days.map(({ day }) => day.date).sort(),
    segments: segments.length,
    dishes: recipes.length,
    lines: lines.length,
    openLines: open.length,
    timedSegments: segments.filter(({ inFrame }) => inFrame !== null).length,
    copied: copied.has(id),
  };
}
