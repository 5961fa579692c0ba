import { z } from 'zod';
import { parseEpisodeData } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';

const side = z.number().nullable();
const missing = z.object({ lineId: z.string(), text: z.string(), reason: z.string() });
const figure = z.object({
  nutrient: z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]]),
  value: z.number(),
  low: side,
  high: side,
  likelyLow: side,
  likelyHigh: side,
  missing: z.array(missing).default([]),
  provisional: z
    .array(
      z.object({
        why: z.string().default('match'),
        lineId: z.string(),
        text: z.string(),
        foodName: z.string(),
      }),
    )
    .default([]),
  sources: z.array(z.string()).default([]),
});
const figures = z.record(z.string(), figure);
const interval = z.object({ low: z.number(), value: z.number(), high: z.number() });

const snapshotSchema = z.object({
  engineVersion: z.string(),
  inputsSha256: z.string(),
  figures: z.object({
    region: z.enum(['US', 'EU']),
    nutrients: z.array(z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]])),
    day: figures,
    dayIsWhole: z.boolean(),
    dishes: z.array(
      z.object({
        segmentId: z.string(),
        title: z.string(),
        whole: figures,
        per100g: figures.nullable().default(null),
        finishedMg: interval.nullable().default(null),
        eaten: figures,
        portions: z.array(z.object({ portionId: z.string(), name: z.string(), figures })),
      }),
    ),
  }),
  file: z.unknown(),
});

/** What a lock froze, read again. */
export interface LockedSnapshot {
  readonly engineVersion: string;
  readonly inputsSha256: string;
  /** The figures as they were locked, without the rows of ingredients. */
  readonly figures: EpisodeFigures;
  /** The inputs; null where this version of the program cannot read them any more. */
  readonly file: EpisodeFile | null;
}

/** How many are remembered: a page asks for the same one, two or three many times over, and each is half a megabyte. */
const REMEMBERED = 4;
const remembered = new Map<string, LockedSnapshot | null>();

/**
 * Reads a snapshot that `takeLock` made, by this version of the program or an earlier one; null where it is none. The
 * same text gives the same object, as long as it is among the last few that were read.
 * @param snapshot canonical JSON
 */
export function readSnapshot(snapshot: string): LockedSnapshot | null {
  const known = remembered.get(snapshot);
  const read = known === undefined ? parseSnapshot(snapshot) : known;
  // Put last again, so that what is asked for longest ago goes first.
  remembered.delete(snapshot);
  remembered.set(snapshot, read);
  const [oldest] = remembered.keys();
  if (remembered.size > REMEMBERED && oldest !== undefined) remembered.delete(oldest);
  return read;
}

function parseSnapshot(snapshot: string): LockedSnapshot | null {
  let data: unknown;
  try {
    data = JSON.parse(snapshot);
  } catch {
    return null;
  }
  const parsed = snapshotSchema.safeParse(data);
  if (!parsed.success) return null;
  const { engineVersion, inputsSha256, file, figures: of } = parsed.data;
  const read = parseEpisodeData(file);
  return {
    engineVersion,
    inputsSha256,
    figures: {
      ...of,
      dishes: of.dishes.map((dish) => ({ ...dish, lines: [] })),
    } as unknown as EpisodeFigures,
    file: read.ok ? read.value : null,
  };
}
