import { describe, expect, it } from 'vitest';
import { brief } from './brief';

/** How a talk of several dishes is told on camera, line by line as captions cut it. Invented, as the demo's. */
describe('a filming day told on camera', () => {
  it.each<[string, string[]]>([
    [
      'By the time the lamps come on I will have eaten\nsixteen eighty-five calories, with 119 grams of protein.',
      ['nutrient 1685 energyKcal kcal day', 'nutrient 119 protein g day'],
    ],
    [
      'So the whole stew is fourteen hundred and nine calories.\nHalf of that is seven hundred and four on my plate,\nwith 34 grams of protein and 21 grams of fat.',
      [
        'nutrient 1409 energyKcal kcal whole',
        'nutrient 704 energyKcal kcal half',
        'nutrient 34 protein g half',
        'nutrient 21 fat g half',
      ],
    ],
    [
      'Each half has 64 grams of protein.\nA slice of 150 grams, cold, has just under 200 calories.',
      ['nutrient 64 protein g half', 'nutrient 200 energyKcal kcal almost slice'],
    ],
    [
      'It is done when the middle says 160 Fahrenheit.\nThen it rests for ten minutes.\nThe whole tray is thirteen sixty-two calories',
      ['insideTemperature 160 F', 'minutes 10 min', 'nutrient 1362 energyKcal kcal whole'],
    ],
  ])('%j', (text, read) => {
    expect(brief(text)).toEqual(read);
  });
});
