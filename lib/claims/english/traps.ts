import type { Role } from '../language';
import { all, framed, phrasesOf } from './words';

/** What makes a number none of the dish's: things filmed with, years, people, aims, questions, what was said before. */
export const TRAPS: [string, Role][] = [
  ...all<Role>(
    'camera, cam, lens, lenses, iso, f /, f, channel, episode, ep, ep., take, part, code, day, days, season, number, no ., nr, #, step, level, floor, version, chapter, minute, scene, shot, track, phone, since, year, card, clip, series, room, shelf, page, row, week, page number, figure, mark, model, size, speed, setting, power, zone, aged, age, top, type, vol, volume, round, since like, since about, back in, born in, until, studio, hob, ring, burner, stage, test, batch number, attempt, try number, video number, video, chapter, filmed in, recorded in, shot in, shot at, recording in, heat, knob, dial, slot, lane, apartment, street, slate, roll',
    { cat: 'trap' },
  ),
  ...all<Role>(
    "to my name, tae ma name, in the picture, in the photo, in the shot, on screen, frames, frame, fps, mm, cm, inch, inches, in., kelvin, k, p60, hz, khz, megapixels, mp, watts, watt, w, volts, subscribers, subscriber, views, view, followers, comments, comment, people ask, years, year, months, month, weeks, week, days, day, in the morning, in the afternoon, in the evening, at night, this morning, this afternoon, times, episodes, takes, videos, cameras, lenses, miles, km, kilometers, kilometres, steps, stone, kilo plates, reps, sets, to park, to get in, for parking, likes, a week, a month, a year, per week, each week, every week, percent off, % off, by, x, of my favourites, of my favorites, of the best, things, reasons, rule, ways, pans, pan, oven, ovens, dishes, trays, apples a day, knives, knife, skillet, attempts, tries, shots, clips, hundred times, million times, o'clock, am, pm, a.m., p.m., th, st, nd, rd, star, stars, out of ten, out of 10, questions, friends, messages, emails, patrons, countries, euros a month, kilos of me, batteries, lights, mics, tripods, shelves, bulbs, minutes in, gb, tb, mb, kg dumbbell, metres, meters, feet, foot, fridges, recipes, ingredients, hob, rings, racks, racks up, shelf",
    { cat: 'trapBehind' },
  ),
  ...all<Role>(
    "what you need, you need, they say you need, don't go over, do not go over, anything under, anything over, anything below, everything under, you save, saves you, saving, save, saves, aim for, aiming for, burned, burn, burnt, burning, you should get, should get, should have, adults need, we all need, people need, you need to eat, should be getting, aim to get, aiming at, aim at, i aim for, try to stay under, trying to stay under, stay under, trying to hit, try to hit, trying to get, try to get, try and hit, try and get, i try and, like to hit, like to get, like to stay under, like to keep it under, gunning for, want it under, wanted it over, wanted to get it under, get it under, get this under, keeping it under, get it down to, trying to get it under, get them under, i look for, looking for, happy with, going for, i go for, hope for, want to stay under, want to be under, should stay under, shouldn't go over, not going over, to stay under, budgeted, hoping to get, would love to hit, would love, need to get, got to hit, have to hit, meant to hit, meant to get, meant to have, meant to be, you're meant to, supposed to get, supposed to have, advised, add, add on, tack on, knock off, take off, shave off, i ate, i eat, i was eating, i've eaten, i usually eat, i normally eat, i've been eating, i thought it'd be, i thought it was, i thought it would be, thought it would be, thought it was, was expecting, i expected, expecting, i guessed, i'd have guessed, you'd think it's, you'd expect, you would expect, packet says, label says, box says, bag says, tub says, tin says, back of the packet says, back of the pack says, the pack says, it says on the packet, it says on the label, i budget, we budget, goal for today was, goal for today is, goal today was, goal today is, my goal for today was, weekly budget, shopping budget, food budget, grocery budget, budget for the week, the budget was, the budget is, my budget is, goal, goal is, my goal is, target, target is, targets, limit, limit is, budget of, budget is, leaves me, leaves me with, that leaves, leaving me, want to hit, wanted to hit, need to hit, i need, allowed, should eat, should be eating, maintenance, maintenance is, i shoot for, shooting for, shoot for, hoping for, trying for, hit my, under my, wish it was, wanted it under, i want, we wanted, i try for, my limit, supposed to eat, room for, i have left, still have, left with, to keep it under, keep it under, keep it below, trying to keep it under, stay below, stay within, wanted, was hoping for, hoping to hit, i'd like, i would like, need about, recommends, recommended, recommendation is, guideline is, supposed to be, up to my, to reach, planned, planning on, my cap is, cap is, ceiling is, ceiling of, cap of, allowance of, macro goal, they recommend, the aim is, the plan was, plan is",
    { cat: 'target' },
  ),
  ...all<Role>(
    "coach gives me, trainer gives me, plan gives me, app gives me, dietitian gives me, doctor gives me, coach says, trainer says, coach wants me on, coach has me on, keep it around, keep it at, keep it to, keep that under, keep that around, stay around, stick to, sticking to, and keep it, i was going to say, i was gonna say, i nearly said, i almost said, i wanted to say, i'd have said, i would have said, i'd have thought, i would have thought, i thought i'd get, i thought we'd get, i thought it had, i thought there was, i thought i had, i'd love it to be, i wish it was, i wish it had, i wish it were, you'd be forgiven for thinking, had i said, hard it is to get, easy it is to get, hard to get, easy to get, try getting, good luck getting",
    { cat: 'target' },
  ),
  ...all<Role>(
    'budget, goal, target, limit, allowance, ceiling, cap, requirement, daily target, daily goal, quota, advice, guidance, recommendation, guideline, guidelines, reference intake, recommended amount',
    { cat: 'goal' },
  ),
  ...all<Role>(
    'is my goal, is my target, is the goal, is the target, goal, target, is my limit, budget, left for, to go, left over, remaining, is my number, is the aim, is the limit, a day is what i aim for, deficit, limit, left for dinner, for the rest of the day, left today, to play with, to spare, is what i aim for, is the dream, was the plan, is the plan, left in the budget, in the bank, left',
    { cat: 'targetBehind' },
  ),
  ...all<Role>(
    'to spend, to work with, to use up, to burn, difference, of a difference, gap, saving, reduction, swing',
    { cat: 'targetBehind' },
  ),
  ...all<Role>(
    "who has time to eat, who has time for, who is getting, who's getting, who needs, nobody needs, no one needs, nobody is getting, nobody's getting, no one is getting, who is, who's, whos, who gets, who eats, who has, nobody is, nobody's, nobody gets, nobody eats, no one is, no one's, is eating, they write, they put, how many, how much, can you get, is it, is that, is this, are there, does it, do you, did i, can you, do you reckon, do you think, do you reckon it's, do you think it's, would you believe, would you say, guess, what if, what if i told you, what if i said, do i, does this, do we, will it, could it be, would you, was it, who said, is there, are you, am i, has it, should i, should it, are you meant to get, am i meant to get",
    { cat: 'ask' },
  ),
  ...all<Role>(
    "they say it's, they say, people say, google says, i said, i say, card says, the card says, i told you, packet says, the packet says, says, i wrote, said, it said, i had said, the old card, last week, last time, last week i, old card, in the intro, intro says, on screen it says, the graphic says, the caption says, i called it, i typed, i put down, i read out, it read, i claimed, i quoted, the card said, title says, thumbnail says, last episode, in the last video, last video, the last one, in the last episode",
    { cat: 'heard' },
  ),
];

/** Other days and other ways of making it, and what leads back to this dish. */
export const OTHER_DAYS: [string, Role][] = [
  ...all<Role>(
    "last time, last week, last week i, last month, last month i, before it was, back then, the first time, first time i, first time round, when i did, when i made, in spring, in the spring, in the summer, in winter, last year, last month, last summer, last winter, yesterday, yesterday's, last night, last night's, last week's, last month's, last year's, the other day, the other night, last monday, last tuesday, last wednesday, last thursday, last friday, last saturday, last sunday, last week the, last month the, last time the, last week we had, last time we had, last month we had, the week before, last episode's, last video's, tomorrow, tomorrow's, next week's, next week, next time, next episode, next video, back in the day, years ago, if you made, if i made, if you used, if i used, if you use the other, if i use the other, if you swap, if you swapped, if you went with, if i'd used, if i had used, if you add, if you added, if i add, if we add, if you put, if i put, if you have it with, if i have it with, if you do it without, if you do it with, if you make it with, if you made it with, had i used, with cream instead, swap :, swaps :, variation :, option :, if you want more, if you want to up, if you'd rather, if you prefer, swap the, swap in, swap out, if you leave out, if you skip, if it was, if they were, if it were, suppose it, suppose you, imagine it, imagine if, imagine you, let us pretend, let's pretend, pretend, if you doubled, if i doubled, if you ate, on a bad day, on a good day, in theory, in my last video, for my last video, my last video, in last week's video, would've been, would have been, could have been, could've been, should've been, it used to be, they used to be, this used to be, that used to be, mine used to be, these used to be, used to come out at, used to come in at, used to come to, used to work out at",
    { cat: 'otherDay' },
  ),
  ...all<Role>(
    framed(
      '{} it with, {} this with, {} these with, {} them with, {} mine with, {} it using',
      phrasesOf(
        'i used to make, we used to make, used to make, i used to do, we used to do, i used to cook',
      ),
    ).join(', '),
    { cat: 'otherDay' },
  ),
  ...all<Role>(
    framed(
      'i did on {}, i made on {}, i had on {}, we did on {}, we made on {}, we had on {}, you saw on {}',
      phrasesOf('monday, tuesday, wednesday, thursday, friday, saturday, sunday, the weekend'),
    ).join(', '),
    { cat: 'otherDay' },
  ),
  ...all<Role>(
    "this one, this week, today, today's, tonight, tonight's, mine, instead of that, whereas, now, and this is, but this is, and these are, but these are, and this version, but this version, this version is",
    { cat: 'now' },
  ),
];

/** Words that take back a number said before. */
export const CORRECTIONS: [string, Role][] = [
  ...all<Role>(
    "ah no, oh no, ach no, ah sorry, no ., no it doesn't, no it isn't, no they don't, no it's not, no that's not, ignore that, no i tell a lie, i tell a lie, tell a lie, i lie, actually i lie, i am lying, no wait, wait no, oh wait, wait, sorry, oh sorry, scratch that, i mean, make that, make it, let's make it, no sorry, sorry no, i meant, actually no, no actually, strike that, not that, that's wrong, that is wrong, that was wrong, not right, old number, is wrong, which is wrong, let me correct that, my bad, my mistake, i lied, hang on, hold on, oops, whoops, or rather, rather, no no, excuse me, pardon, i misspoke, let me start again, let me start over, start over, starting over, no make that, let me try again, no it's, no its, no that's, wait sorry, er no, uh no, um no, nope, i should say, let me fix that, let's call it, well actually, that's a lie, that is a lie, wrong one, wrong number, wrong line, wrong row, wrong column, wrong tab, wrong page, wrong sheet, apologies, i misread, i misread it, i've misread that, let me check, let me look, let me see, lemme check, let me double check, the right number is, the correct number is, the real number is, the right figure is, the correct figure is, it should be, it should read, it should say, let me read that again, let me do that again, let me look again",
    { cat: 'correct', how: 'strong' },
  ),
  ...framed(
    'in the video should {}, on screen should {}, on the card should {}, in the title should {}, in the graphic should {}, in the intro should {}, in the caption should {}, in the voiceover should {}, at the end should {}, should have {}, i meant to {}',
    ['be', 'read', 'say', 'been', 'said'],
  ).map((phrase): [string, Role] => [phrase, { cat: 'correct', how: 'strong' }]),
  ...framed('{} reading, {} looking at, {} on', ["i'm", 'i am', 'i was']).map(
    (phrase): [string, Role] => [phrase, { cat: 'mistook' }],
  ),
  ...all<Role>(
    "i read, i looked at, that's, that was, that is, those are, i read out, i read you, you're looking at",
    { cat: 'mistook' },
  ),
  ...all<Role>('no, actually, well', { cat: 'correct', how: 'weak' }),
  ...all<Role>(
    'correction to the video, edit, correction, corrections, update, erratum, errata, fixed',
    { cat: 'correct', how: 'heading' },
  ),
];

/** Parts of one by which something is less or more: 'a third fewer calories'. */
const LESS = [
  [1 / 2, 'half'],
  [1 / 3, 'a third, one third'],
  [2 / 3, 'two thirds'],
  [1 / 4, 'a quarter, one quarter'],
  [3 / 4, 'three quarters'],
  [1 / 5, 'a fifth, one fifth'],
  [1 / 10, 'a tenth'],
] as const;

/** So many times what was said. */
export const TIMES: [string, Role][] = [
  ...(
    [
      [1 / 2, 'half of that, half that, half of those, half of all that, half of it all'],
      [1 / 3, 'a third of that, one third of that, third of that'],
      [2 / 3, 'two thirds of that, two-thirds of that'],
      [1 / 4, 'a quarter of that, quarter of that, a fourth of that, one quarter of that'],
      [3 / 4, 'three quarters of that, three fourths of that'],
      [1 / 5, 'a fifth of that, fifth of that, one fifth of that'],
      [1 / 6, 'a sixth of that'],
      [1 / 8, 'an eighth of that'],
      [2, 'twice that, double that, two times that, double it, twice as much, 2x that'],
      [3, 'three times that, triple that, triple it, 3 times that'],
      [4, 'four times that, quadruple that'],
      [
        1,
        'the same again, same again, the same of, same of, the same amount of, same amount of, the same weight of, same weight of',
      ],
    ] as const
  ).flatMap(([factor, words]) => all<Role>(words, { cat: 'times', factor, of: 'that' })),
  ...(
    [
      [1 / 2, 'half the, half of the, half as many, half as much'],
      [1 / 3, 'a third of the, one third of the, third of the, a third the, one third the'],
      [2 / 3, 'two thirds of the, two thirds the'],
      [1 / 4, 'a quarter of the, quarter of the, a quarter the'],
      [3 / 4, 'three quarters of the, three quarters the'],
      [2, 'twice the, double the, two times the, twice as much, twice as many, 2x the'],
      [3, 'three times the, triple the, 3 times the, 3x the'],
      [4, 'four times the, 4 times the, 4x the'],
      [5, 'five times the, 5 times the, 5x the'],
      [10, 'ten times the'],
    ] as const
  ).flatMap(([factor, words]) => all<Role>(words, { cat: 'times', factor, of: 'noun' })),
  ...LESS.flatMap(([factor, words]) => [
    ...all<Role>(framed('{} less, {} fewer', phrasesOf(words)).join(', '), {
      cat: 'times',
      factor,
      of: 'less',
    }),
    ...all<Role>(framed('{} more, {} extra', phrasesOf(words)).join(', '), {
      cat: 'times',
      factor,
      of: 'more',
    }),
  ]),
];
