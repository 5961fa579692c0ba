import type { Graph } from 'schema-dts';
import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, type PublishedNumbers } from '#lib/figures/published-numbers';
import type { LeftOfData } from '#lib/publish/structured/left-of-data';
import { recipeData } from '#lib/publish/structured/recipe-data';
import { VIDEO_NODE, videoData } from '#lib/publish/structured/video-data';

/** What structured data is made from: an episode with the numbers that it publishes. */
export interface Publishable {
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
  readonly numbers: PublishedNumbers;
}

/** An episode as data for machines that read its page, and what is not in it. */
export interface StructuredData {
  readonly graph: Graph;
  /** JSON-LD, exactly as it is downloaded; a line feed at the end. */
  readonly json: string;
  /** The same within its element of HTML, exactly as it is copied. */
  readonly script: string;
  readonly left: readonly LeftOfData[];
}

/**
 * The episode as JSON-LD in the words of schema.org 30.0: its video with chapters as clips, and each dish as a recipe.
 * Law: what is written is known; what is open is in `left`, by name and reason.
 */
export function structuredData({ file, figures, numbers }: Publishable): StructuredData {
  const confirmed = confirmedOnly(numbers);
  const video = videoData(file);
  const recipes = dishesOf(file.episode.segments).map((dish) =>
    recipeData(dish, file, figures, confirmed, VIDEO_NODE),
  );
  const graph: Graph = {
    '@context': 'https://schema.org',
    '@graph': [video.video, ...recipes.map(({ recipe }) => recipe)],
  };
  const json = jsonLd(graph);
  return {
    graph,
    json: `${json}\n`,
    script: `<script type="application/ld+json">\n${json}\n</script>\n`,
    left: [...recipes.flatMap(({ left }) => left), ...withoutLock(file), ...video.left],
  };
}

/** Dishes that came since the numbers were locked: what goes out has no recipe of them. */
function withoutLock({ episode }: EpisodeFile): LeftOfData[] {
  return episode.segments
    .filter(({ kind, recipe }) => kind === 'recipe' && recipe === null)
    .map(({ id, title }) => ({
      segmentId: id,
      dish: title,
      what: 'all of it',
      why: 'it came after the numbers were locked: lock them again',
    }));
}

/**
 * JSON that may stand within a script element: no `<` is left that could end it or open a comment (HTML Living Standard,
 * 4.12.1.3 "Restrictions for contents of script elements"), and it means the same.
 * @example jsonLd('</script>') // '"\\u003c/script>"'
 */
export function jsonLd(data: unknown): string {
  return JSON.stringify(data, null, 2).replaceAll('<', String.raw`\u003c`);
}
