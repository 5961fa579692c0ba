import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { celsius, minutes } from '#seed/demo/shorthand';
import { UNSAID_KITCHEN } from '#lib/episode/unsaid';

/** The person behind the camera, invented. */
export const CREATOR: EpisodeFile['creator'] = {
  id: 'creator-runa',
  name: 'Runa Skarvholt',
  wordsPerMinute: null,
};

export const SCALE = { flat: 'scale-flat', fine: 'scale-fine' } as const;
export const OVEN = 'oven-main';
export const MICROWAVE = 'appliance-microwave';

/** Her kitchen above the boat shed in Skellinghavn, an invented harbour town on a real time zone. */
export const KITCHEN: Kitchen = {
  ...UNSAID_KITCHEN,
  id: 'kitchen-boat-shed',
  name: 'Above the boat shed, Skellinghavn',
  zone: 'Europe/Copenhagen',
  lat: 55.93,
  lon: 10.98,
  burners: 3,
  ovens: [
    {
      id: OVEN,
      name: 'Oven',
      racks: 2,
      coldMilliC: celsius(20),
      mostMilliC: celsius(275),
      // Timed with an oven thermometer; down with the door ajar.
      changes: [
        {
          id: 'oven-20-160',
          fromMilliC: celsius(20),
          toMilliC: celsius(160),
          seconds: minutes(9.5),
        },
        { id: 'oven-20-220', fromMilliC: celsius(20), toMilliC: celsius(220), seconds: 840 },
        { id: 'oven-160-220', fromMilliC: celsius(160), toMilliC: celsius(220), seconds: 390 },
        { id: 'oven-220-160', fromMilliC: celsius(220), toMilliC: celsius(160), seconds: 780 },
      ],
      heatSPerC: 4,
      coolSPerC: 13,
    },
  ],
  appliances: [{ id: MICROWAVE, name: 'Microwave', places: 1 }],
  cleanDownS: minutes(6),
  houseShots: [
    {
      id: 'house-scale',
      title: 'Scale display',
      moment: 'onTheScale',
      framing: 'close',
      lengthS: 3,
    },
    {
      id: 'house-still',
      title: 'Untouched, for the thumbnail',
      moment: 'still',
      framing: 'a little above',
      lengthS: 3,
    },
    { id: 'house-number', title: 'The number', moment: 'number', framing: 'face', lengthS: 8 },
  ],
  scales: [
    { id: SCALE.flat, name: 'Flat scale, 1 g', resolutionMg: 1000, accuracyPpm: 2000 },
    { id: SCALE.fine, name: 'Spice scale, 0.1 g', resolutionMg: 100, accuracyPpm: 1000 },
  ],
  spreads: [
    { id: 'spread-spoon', kind: 'spoon', permille: 80 },
    { id: 'spread-cup', kind: 'cup', permille: 100 },
    { id: 'spread-piece', kind: 'piece', permille: 120 },
    { id: 'spread-slice', kind: 'slice', permille: 100 },
    { id: 'spread-handful', kind: 'handful', permille: 350 },
  ],
};
