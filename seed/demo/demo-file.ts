import { FILE_FORMAT, FILE_VERSION, type EpisodeFile } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { SKILLET, SKILLET_LINKS } from '#seed/demo/barley-skillet';
import { DAY, DAY_LINKS } from '#seed/demo/day';
import { GLAZE } from '#seed/demo/glaze';
import { GOING_OUT } from '#seed/demo/going-out';
import { INTRO, OUTRO } from '#seed/demo/intro-and-outro';
import { CREATOR, KITCHEN } from '#seed/demo/kitchen';
import { LABEL_FOODS } from '#seed/demo/label-foods';
import { PACKS, STOCK } from '#seed/demo/pantry';
import { demoReferenceFoods } from '#seed/demo/reference-foods';
import { EDIT } from '#seed/demo/rehearsal';
import { SKYR, SKYR_LINKS } from '#seed/demo/skyr-pots';
import { MEATLOAF, MEATLOAF_LINKS } from '#seed/demo/turkey-meatloaf';

/**
 * The demo: a winter day of eating in an invented harbour town, two days before it is filmed. Person, town,
 * shop and brands are invented; the composition of the plain foods is that of USDA SR28.
 * @param references all foods of SR28, as the loader gives them
 */
export function demoFile(references: readonly Food[]): EpisodeFile {
  return {
    format: FILE_FORMAT,
    version: FILE_VERSION,
    recipes: [GLAZE],
    savedAt: '2026-12-10T18:00:00.000Z',
    creator: CREATOR,
    kitchen: KITCHEN,
    foods: [...demoReferenceFoods(references), ...LABEL_FOODS],
    episode: {
      id: 'episode-harbour-day',
      title: 'One oven, three dishes, a whole harbor day',
      hook: 'The sun is up for seven hours, the oven for one. A barley skillet, a turkey meatloaf that bakes flat, and skyr pots with a crumb you can hear, and every number either weighed or owned up to.',
      region: 'US',
      publishOn: '2026-12-17',
      rate: { num: 25, den: 1 },
      targets: [
        {
          id: 'target-protein',
          nutrient: 'protein',
          relation: 'atLeast',
          amount: 100,
          segmentId: null,
          portionId: null,
        },
        {
          id: 'target-energy',
          nutrient: 'energyKcal',
          relation: 'atMost',
          amount: 1650,
          segmentId: null,
          portionId: null,
        },
        {
          id: 'target-loaf-fat',
          nutrient: 'fat',
          relation: 'atMost',
          amount: 60,
          segmentId: MEATLOAF.id,
          portionId: null,
        },
      ],
      dropFrame: false,
      energyStep: 1,
      anythingElse: null,
      segments: [INTRO, SKILLET, MEATLOAF, SKYR, OUTRO],
      links: [...SKILLET_LINKS, ...MEATLOAF_LINKS, ...SKYR_LINKS, ...DAY_LINKS],
      webLinks: [
        {
          id: 'web-recipes',
          label: 'The three recipes on one page',
          url: 'https://runa-skarvholt.example/harbor-day',
        },
        {
          id: 'web-letter',
          label: 'My Sunday letter',
          url: 'https://runa-skarvholt.example/letter',
        },
      ],
      disclosure: 'Nobody paid for anything in this video. I bought it all on the quay.',
    },
    day: DAY,
    said: [],
    edit: EDIT,
    publish: GOING_OUT,
    stock: [...STOCK],
    packs: [...PACKS],
    pantry: [],
    shops: [],
  };
}
