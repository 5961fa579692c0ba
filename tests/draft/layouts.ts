import type { OutTexts } from '#lib/draft/draft';

export interface Layout extends OutTexts {
  readonly name: string;
  /** As `sketch` prints it. */
  readonly comes: string;
}

/** Descriptions in the layouts that people write, all invented, with what must come out of each. */
export const LAYOUTS: readonly Layout[] = [
  {
    name: 'chapters, dishes in capitals with bullets, one of them with portions',
    title: 'A whole day at 1,900 calories',
    description: `Three plates and a snack, all weighed, nothing left out.

0:00 Intro
0:48 Barley breakfast bowl
3:10 Turkey tray bake
7:45 What it all adds up to

BARLEY BREAKFAST BOWL
• 60 g pearl barley, dry
• 200 ml semi-skimmed milk
• 80 g raspberries

TURKEY TRAY BAKE (serves 4)
• 500 g ground turkey, raw
• 2 eggs
• 80 g rolled oats
• salt and pepper
Per portion: 310 kcal, 34 g protein

My scale: https://quay-scales.example/one
#highprotein #mealprep`,
    comes: `title A whole day at 1,900 calories
hook Three plates and a snack, all weighed, nothing left out.
0:00 talk Intro
0:48 dish Barley breakfast bowl
  60 g pearl barley, dry
  200 ml semi-skimmed milk
  80 g raspberries
3:10 dish Turkey tray bake ×4
  500 g ground turkey, raw
  2 eggs
  80 g rolled oats
  salt and pepper
7:45 talk What it all adds up to
link My scale = https://quay-scales.example/one
left description 18 numbers`,
  },
  {
    name: 'one dish under labels, its chapters are its stages',
    title: 'Lentil traybake for the week',
    description: `0:00 Intro
0:35 Ingredients
1:50 Making the sauce
4:20 Baking
6:05 Macros and taste test
7:00 Outro

Ingredients (makes 6 portions):
250g red lentils
1 x 400 g tin chopped tomatoes
1 ½ tbsp olive oil
For the topping:
60 g feta
a handful of parsley

Method:
1. Heat the oven to 190 °C.
2. Mix all but the topping in a deep tray.
3. Bake for 35 minutes.

Allergens: milk`,
    comes: `title Lentil traybake for the week
0:00 talk Intro
0:35 dish Lentil traybake for the week ×6
  250g red lentils
  1 x 400 g tin chopped tomatoes
  1 ½ tbsp olive oil
  60 g feta
  a handful of parsley
  > Heat the oven to 190 °C.
  > Mix all but the topping in a deep tray.
  > Bake for 35 minutes.
7:00 talk Outro
left description 21 allergens`,
  },
  {
    name: 'no chapters, two dishes under marked headings, each with labels',
    title: '',
    description: `Two suppers from one bag of beans.
Cook once, eat twice.

## Smoky bean pot
Serves 3

### Ingredients
- 1 tbsp rapeseed oil
- 1 onion, finely chopped
- 480 g black beans, drained

### Method
Fry the onion for 8 minutes. Add the beans and simmer for 20 minutes.

## Bean toasts
Makes 2

### Ingredients
- 4 slices sourdough
- 160 g black beans, drained
- 40 g light cheddar, grated`,
    comes: `hook Two suppers from one bag of beans. / Cook once, eat twice.
- dish Smoky bean pot ×3
  1 tbsp rapeseed oil
  1 onion, finely chopped
  480 g black beans, drained
  > Fry the onion for 8 minutes. Add the beans and simmer for 20 minutes.
- dish Bean toasts ×2
  4 slices sourdough
  160 g black beans, drained
  40 g light cheddar, grated`,
  },
  {
    name: 'a dish a line, with pictures for bullets',
    title: 'Monday, weighed',
    description: `Everything I ate on Monday 👇
🥣 Breakfast – 80 g oats, 250 ml milk, 1 banana
🥗 Lunch – 150 g cooked chicken breast, 1 tortilla, 30 g light mayo
🍫 Snack – 1 protein bar
Like and subscribe for more!`,
    comes: `title Monday, weighed
hook Everything I ate on Monday 👇
- dish Breakfast
  80 g oats
  250 ml milk
  1 banana
- dish Lunch
  150 g cooked chicken breast
  1 tortilla
  30 g light mayo
- dish Snack
  1 protein bar
left description 5 prose`,
  },
  {
    name: 'a table with bars, grams in its head',
    title: 'Skyr cheesecake, by the gram',
    description: `The whole cake, by the gram.

| Ingredient | Grams | kcal | Protein |
|---|---:|---:|---:|
| skyr, plain | 450 | 284 | 49.5 |
| eggs | 110 | 157 | 13.9 |
| honey | 30 | 91 | 0.1 |
| **Total** | 590 | 532 | 63.5 |

Cuts into 8 slices.`,
    comes: `title Skyr cheesecake, by the gram
hook The whole cake, by the gram.
- dish Skyr cheesecake, by the gram ×8
  450 g skyr, plain
  110 g eggs
  30 g honey
left description 8 numbers`,
  },
  {
    name: 'a table out of a spreadsheet, and a dish named above it',
    title: 'What I cooked on Sunday',
    description: `Harbour fish pie
Food\tAmount\tCalories
cod fillet, raw\t400 g\t328
potatoes, peeled\t600 g\t462
semi-skimmed milk\t150 ml\t75
Serves four`,
    comes: `title What I cooked on Sunday
- dish Harbour fish pie ×4
  400 g cod fillet, raw
  600 g potatoes, peeled
  150 ml semi-skimmed milk`,
  },
  {
    name: 'the ingredients stand somewhere else',
    title: 'Two pastas, one pan',
    description: `0:00 Hello
0:30 Creamy courgette pasta
4:15 Tomato and tuna pasta
8:40 Verdict

Ingredients (see blog)
Full recipes: https://galley-notes.example/two-pastas`,
    comes: `title Two pastas, one pan
0:00 talk Hello
0:30 dish Creamy courgette pasta
4:15 dish Tomato and tuna pasta
8:40 talk Verdict
link Full recipes = https://galley-notes.example/two-pastas
left description 6 elsewhere`,
  },
  {
    name: 'fractions, ranges, amounts behind, marks of direction',
    title: 'Carrot soup',
    description: `CARROT SOUP
Serves 4-6

INGREDIENTS
1 1/2 cups vegetable stock
2–3 carrots
½ tsp cumin
Butter: 20 g
200–250 g potatoes (about 2)
\u202E05 g cream
salt, to taste`,
    comes: `title Carrot soup
- dish CARROT SOUP
  1 1/2 cups vegetable stock
  2–3 carrots
  ½ tsp cumin
  Butter: 20 g
  200–250 g potatoes (about 2)
  05 g cream
  salt, to taste
left description 2 portions`,
  },
  {
    name: 'a page’s markup',
    title: 'Jars for the fridge',
    description: `<h2>Oat jars</h2>
<p>Makes 3 jars</p>
<ul><li>120&nbsp;g rolled oats</li><li>&frac12; tsp cinnamon</li><li>300 g skyr &amp; a pinch of salt</li></ul>`,
    comes: `title Jars for the fridge
- dish Oat jars ×3
  120 g rolled oats
  ½ tsp cinnamon
  300 g skyr
  a pinch of salt`,
  },
  {
    name: 'somebody paid, a list of things that are no food, allergens',
    title: 'Cheaper protein',
    description: `Thanks to Tern & Tide for sponsoring this video. Some links below are affiliate links, and I may earn a commission.

Is it really cheaper to eat this much protein? I priced a day.

Egg fried rice
Ingredients:
300 g cooked rice
3 eggs
1 tbsp soy sauce
Contains: eggs, soy, wheat

GEAR
- 2 x 5 kg scales
- 1 tripod: https://stilt.example/tripod
Find me
https://letters.example/runa`,
    comes: `title Cheaper protein
hook Is it really cheaper to eat this much protein? I priced a day.
- dish Egg fried rice
  300 g cooked rice
  3 eggs
  1 tbsp soy sauce
link 1 tripod = https://stilt.example/tripod
link Find me = https://letters.example/runa
disclosure Thanks to Tern & Tide for sponsoring this video. Some links below are affiliate links, and I may earn a commission.
left description 10 allergens
left description 13 prose`,
  },
  {
    name: 'times behind or in brackets, numbered recipes, meals as chapters',
    title: 'Meal prep for 5 days',
    description: `Timestamps
Intro [0:00]
Recipe 1: Peanut tofu trays [1:05]
Recipe 2: Berry oat slices [6:30]
Storing and reheating [10:20]
Bye! [11:00]

Recipe 1: Peanut tofu trays (5 portions)
600g firm tofu
75g peanut butter
5 nests rice noodles

Recipe 2: Berry oat slices
makes 12
240g rolled oats
300g frozen berries
2 large eggs
Bake at 180C for 25 mins.`,
    comes: `title Meal prep for 5 days
0:00 talk Intro
1:05 dish Peanut tofu trays ×5
  600g firm tofu
  75g peanut butter
  5 nests rice noodles
6:30 dish Berry oat slices ×12
  240g rolled oats
  300g frozen berries
  2 large eggs
  > Bake at 180C for 25 mins.
11:00 talk Bye!`,
  },
  {
    name: 'no list: amounts are taken as they are said, each in its chapter',
    title: 'Low effort, high protein',
    description: `0:00 Intro
0:20 Turkey wraps
1:10 Cocoa skyr`,
    captions: `WEBVTT

00:00:02.000 --> 00:00:06.000
hi everyone, two quick ones today

00:00:22.000 --> 00:00:27.000
so first I used 220 grams of ground turkey

00:00:30.000 --> 00:00:34.000
and I used 60 grams of light mozzarella

00:01:12.000 --> 00:01:17.000
I used two hundred and fifty grams of skyr

00:01:20.000 --> 00:01:24.000
so the whole bowl is 210 calories`,
    comes: `title Low effort, high protein
0:00 talk Intro
0:20 dish Turkey wraps
  220 grams of ground turkey
  60 grams of light mozzarella
1:10 dish Cocoa skyr
  two hundred and fifty grams of skyr`,
  },
  {
    name: 'captions alone: dishes by the words that bring them in',
    title: '',
    captions: `[0:00] Morning, this is everything I eat on a filming day.
[0:12] First up is the barley skillet. I used 90 grams of barley and I used 150 grams of cottage cheese.
[1:40] Next up, turkey burgers. I used 400 grams of ground turkey.
[3:05] And that is the day.`,
    comes: `0:12 dish barley skillet
  90 grams of barley
  150 grams of cottage cheese
1:40 dish turkey burgers
  400 grams of ground turkey`,
  },
  {
    name: 'dishes from the description, their times from what is said',
    title: 'Two trays',
    description: `LEMON COD TRAY
400 g cod, raw
300 g new potatoes

HALLOUMI TRAY
200 g halloumi
2 courgettes`,
    captions: `1
00:00:05,000 --> 00:00:09,000
two trays and one oven

2
00:00:31,000 --> 00:00:35,000
first up the lemon cod tray

3
00:03:02,500 --> 00:03:06,000
now the halloumi tray is even easier`,
    comes: `title Two trays
0:31 dish LEMON COD TRAY
  400 g cod, raw
  300 g new potatoes
3:02 dish HALLOUMI TRAY
  200 g halloumi
  2 courgettes`,
  },
];
