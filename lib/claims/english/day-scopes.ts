import type { Role } from '../language';
import { scope } from './scope-phrases';
import { framed, phrasesOf } from './words';

/** What a day has, all of it and up to now. */
export const DAY_SCOPES: [string, Role][] = [
  // No day that is counted.
  ...scope(
    phrasesOf('my day off, a day off, day off, the day off, rest day, my rest day'),
    'dish',
    'ahead',
  ),
  ...scope(
    framed(
      "after {} i'm at, after {} i'm on, after {} i was at, after {} i was on, by {} i'm at, by {} i'm on, by {} i was on, by {} i was at, after {} we're at, that's me at, that puts me at",
      phrasesOf(
        'breakfast, lunch, dinner, tea, that, supper, teatime, dinnertime, lunchtime, then',
      ),
    ),
    'soFar',
    'free',
  ),
  ...scope(
    framed(
      'day {} total, day {} totals, total for day {}, day {} done, day {} in total',
      phrasesOf('one, two, three, four, five, six, seven, 1, 2, 3, 4, 5, 6, 7'),
    ),
    'day',
    'free',
  ),
  ...scope(
    phrasesOf(
      "today, i will have eaten, i'll have eaten, we will have eaten, we'll have eaten, for the day, the day, in a day, day total, daily calories, all day, the whole day, per day, for the whole day, day's total, total for the day, on the day, over the day, across the whole day, the full day, daily total, total for today, the day's total, that's the day, day's eating, end of day, end of the day, for the full day, for the entire day, day in total, my day's, my full day, day done, the day lands at, the day comes to, across today, today all in all, a day, in one day, across the day, full day, / day, full day of eating, my day, whole day, end of the day total, the entire day, this whole day, for today",
    ),
    'day',
    'free',
  ),
  ...scope(['of the day'], 'day', 'behind'),
  ...scope(
    phrasesOf(
      'takes me to, brings me to, takes me up to, brings me up to, puts me on, leaves me on, taking me to, bringing me to, so far, so far today, today so far, for the day so far, up to now, the day so far, until now, running total, thus far, as of now, up to this point, before dinner, so far for the day, day so far, at this point in the day, by this point, going into dinner, heading into dinner, going into lunch, heading into lunch, with dinner to come, with lunch to come, at this stage of the day, by this stage, by now, as it stands, to this point, with dinner still to come, with dinner to go, the running total, my running total, tally so far, up til now, up till now, up until now, up to here, to date, by lunchtime, by lunch, by mid afternoon, before my dinner, before tea, thus far today, at this stage, the tally',
    ),
    'soFar',
    'free',
  ),
];
