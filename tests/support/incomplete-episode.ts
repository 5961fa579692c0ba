import type { EpisodeFile } from '#lib/episode/schema';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from './build';

/**
 * An episode with one dish that is open (an ingredient without a food) and one that is incomplete (an ingredient whose
 * source states nothing but fat), each portioned, weighed and talked about, with targets on both and on the day. What
 * is known of a dish is a sum that none of its ingredients has alone.
 */
export function incompleteEpisode(region: 'US' | 'EU' = 'US'): EpisodeFile {
  const full = {
    energyKcal: '287',
    energyKj: '1201',
    protein: '23.71',
    fat: '17.33',
    saturated: '11.17',
    carbohydrate: '41.19',
    fibre: '13.37',
    sugars: '19.61',
    cholesterol: '117',
    sodium: '713',
  };
  const first = aFood('first', full, { name: 'First food' });
  const second = aFood(
    'second',
    { ...full, energyKcal: '331', protein: '37.93', carbohydrate: '29.41', fibre: '17.77' },
    { name: 'Second food' },
  );
  const bare = aFood('bare', { fat: '1.23' }, { name: 'Bare food' });
  const points = [
    { id: 'p', text: 'All of it: [energy, whole], [protein, whole], [fibre, whole].' },
    { id: 'q', text: 'Half: [energy, each], [net carbs, each]. The day: [protein, day].' },
  ];
  const dish = (id: string, title: string, last: ReturnType<typeof aLine>, g: number) =>
    aDish(
      id,
      aRecipe(
        `${id}-recipe`,
        [
          grams(`${id} first`, 'first', 911 + g, { text: `the first of ${title}` }),
          grams(`${id} second`, 'second', 677 + g, { text: `the second of ${title}` }),
          last,
        ],
        {
          title,
          weighings: [aReading(`${id}-finished`, 'finished', 1777)],
          portions: [
            { id: `${id}-half`, kind: 'count', name: 'one of two', of: 2 },
            { id: `${id}-plate`, kind: 'mass', name: 'a plate', massMg: 333_000 },
          ],
        },
      ),
      { title, talkingPoints: points.map((point) => ({ ...point, id: `${id}-${point.id}` })) },
    );
  const target = { relation: 'about', amount: 55, portionId: null } as const;
  return aFile(
    [
      dish('open', 'Open stew', aLine('open last', null, { text: 'a mystery herb' }), 0),
      dish('part', 'Partial bake', grams('part last', 'bare', 211, { text: 'a bare root' }), 61),
    ],
    [first, second, bare],
    {
      resolutionMg: 1,
      episode: {
        region,
        targets: [
          { ...target, id: 't1', nutrient: 'protein', segmentId: 'open' },
          { ...target, id: 't2', nutrient: 'protein', segmentId: 'part' },
          { ...target, id: 't3', nutrient: 'energyKcal', segmentId: null },
          { ...target, id: 't4', nutrient: 'fibre', segmentId: 'part', portionId: 'part-half' },
        ],
      },
    },
  );
}
