import type { Layout } from './layouts';

/** More layouts, invented after the reading was written and with what it makes of them once that was looked at line by line. */
export const MORE_LAYOUTS: readonly Layout[] = [
  {
    name: 'meals with pictures, every head with its portions, totals with bars',
    title: 'Everything I Eat to Hit 160 g of Protein',
    description: `Hi all! Today I'm showing you a full day of eating.

▶ Chapters
00:00 - Why 160 g?
01:12 - Breakfast: Cottage cheese pancakes
04:55 - Lunch: Turkey & bean chili
09:20 - Snack
10:05 - Dinner: Salmon rice bowl
14:40 - Totals

❗RECIPES❗

🥞 Cottage cheese pancakes (1 serving)
- 150g cottage cheese
- 2 eggs
- 40g oat flour
- 1 tsp baking powder
~ 410 kcal | 36P | 32C | 15F

🌶️ Turkey & bean chili (4 servings)
- 500g turkey mince (2% fat)
- 1 can kidney beans
- 1 can chopped tomatoes
- 1 onion
- spices: cumin, paprika, salt
~ 380 kcal each

🍣 Salmon rice bowl
- 120g salmon
- 60g rice (dry weight)
- 1/2 avocado
- soy sauce

📲 Follow me
Letters: https://letters.example/me
Shop: https://shop.example/x?ref=abc

*Some links are affiliate links.`,
    comes: `title Everything I Eat to Hit 160 g of Protein
hook Hi all! Today I'm showing you a full day of eating.
0:00 talk Why 160 g?
1:12 dish Breakfast: Cottage cheese pancakes ×1
  150g cottage cheese
  2 eggs
  40g oat flour
  1 tsp baking powder
4:55 dish Lunch: Turkey & bean chili ×4
  500g turkey mince (2% fat)
  1 can kidney beans
  1 can chopped tomatoes
  1 onion
  spices: cumin, paprika, salt
9:20 dish Snack
10:05 dish Dinner: Salmon rice bowl
  120g salmon
  60g rice (dry weight)
  1/2 avocado
  soy sauce
14:40 talk Totals
link Letters = https://letters.example/me
link Shop = https://shop.example/x?ref=abc
disclosure *Some links are affiliate links.
left description 18 numbers
left description 26 numbers
left description 34 prose`,
  },
  {
    name: 'parts of one dish, metric and ounces, portions at the end',
    title: 'Baked Ziti | 45 g protein',
    description: `This one feeds a crowd!

Ingredients:

For the sauce
1 tbsp olive oil
2 cloves garlic, minced
1 (28 oz) can crushed tomatoes

For the pasta
12 oz ziti
15 oz part-skim ricotta
8 oz shredded mozzarella

Directions:
Preheat oven to 375°F.
Cook pasta 2 minutes less than package directions.
Combine everything, bake 25 minutes.

Servings: 8
Nutrition per serving: Calories 412, Protein 28g, Carbs 44g, Fat 13g`,
    comes: `title Baked Ziti | 45 g protein
hook This one feeds a crowd!
- dish Baked Ziti ×8
  1 tbsp olive oil
  2 cloves garlic, minced
  1 (28 oz) can crushed tomatoes
  12 oz ziti
  15 oz part-skim ricotta
  8 oz shredded mozzarella
  > Preheat oven to 375°F.
  > Cook pasta 2 minutes less than package directions.
  > Combine everything, bake 25 minutes.
left description 21 numbers`,
  },
  {
    name: 'numbered dishes, indented lists',
    title: 'Five 10 minute lunches',
    description: `1. Tuna crunch wrap
   1 tin tuna, drained
   30 g light mayo
   1 large tortilla

2. Egg fried rice
   2 eggs
   150 g cooked rice
   
3. Hummus toast
   60 g hummus
   2 slices bread`,
    comes: `title Five 10 minute lunches
- dish Tuna crunch wrap
  1 tin tuna, drained
  30 g light mayo
  1 large tortilla
- dish Egg fried rice
  2 eggs
  150 g cooked rice
- dish Hummus toast
  60 g hummus
  2 slices bread`,
  },
  {
    name: 'meals and dishes on lines of their own, lists parted by commas',
    title: '',
    description: `What I ate today:

Breakfast
Overnight oats
50g oats, 150ml oat milk, 100g berries, 10g chia seeds

Lunch
Leftover curry
300g curry

Dinner:
Pizza night! No recipe, sorry.`,
    comes: `hook What I ate today:
- dish Overnight oats
  50g oats
  150ml oat milk
  100g berries
  10g chia seeds
- dish Leftover curry
  300g curry
left description 12 prose`,
  },
  {
    name: 'labels in capitals, numbers one to a line',
    title: 'Greek chicken traybake',
    description: `Recipe below 👇
INGREDIENTS
600g chicken thighs
700g baby potatoes
2 red peppers
1 lemon
2 tsp oregano
METHOD
Preheat the oven to 200C/180C fan
Toss everything together
Roast for 45 minutes, turning once
TO SERVE
100g tzatziki
NUTRITION (per portion, serves 4)
Calories 455
Protein 38g
Carbs 33g
Fat 18g
FOLLOW
Insta @runa.example`,
    comes: `title Greek chicken traybake
hook Recipe below 👇
- dish Greek chicken traybake ×4
  600g chicken thighs
  700g baby potatoes
  2 red peppers
  1 lemon
  2 tsp oregano
  100g tzatziki
  > Preheat the oven to 200C/180C fan
  > Toss everything together
  > Roast for 45 minutes, turning once
left description 14 numbers
left description 15 numbers
left description 16 numbers
left description 17 numbers
left description 18 numbers
left description 20 prose`,
  },
  {
    name: 'stages in small letters and nothing listed',
    title: 'Chili for the freezer',
    description: `Full written recipe on the website. Macros per bowl: 420 calories, 38g protein.

00:00 start
00:31 what goes in
02:10 browning the meat
05:45 simmer
08:02 weighing the pot
09:10 numbers
10:00 freezer bags`,
    comes: `title Chili for the freezer
0:00 talk start
0:31 dish Chili for the freezer
left description 1 numbers`,
  },
  {
    name: 'bowls with numbers for names',
    title: 'Three yogurt bowls',
    description: `BOWL 1
200 g skyr
80 g blueberries
15 g honey

BOWL 2
200 g skyr
1 banana (peeled weight 100 g)
20 g peanut butter

BOWL 3
200 g skyr
30 g granola`,
    comes: `title Three yogurt bowls
- dish BOWL 1
  200 g skyr
  80 g blueberries
  15 g honey
- dish BOWL 2
  200 g skyr
  1 banana (peeled weight 100 g)
  20 g peanut butter
- dish BOWL 3
  200 g skyr
  30 g granola`,
  },
  {
    name: 'parts of one dish without a label',
    title: 'Lasagne',
    description: `Ragu:
500 g beef mince 5%
1 onion
2 carrots
400 g passata

White sauce:
30 g cornflour
500 ml milk
40 g parmesan

Plus:
12 lasagne sheets
150 g mozzarella

Serves 6. Per portion 430 kcal.`,
    comes: `title Lasagne
- dish Lasagne ×6
  500 g beef mince 5%
  1 onion
  2 carrots
  400 g passata
  30 g cornflour
  500 ml milk
  40 g parmesan
  12 lasagne sheets
  150 g mozzarella
left description 16 numbers`,
  },
  {
    name: 'a soup a line, portions in brackets',
    title: 'Soup week',
    description: `Monday's soup — leek & potato: 300 g leeks, 400 g potatoes, 1 l stock (serves 3)
Tuesday's soup — tomato: 800 g tomatoes, 1 onion, 200 ml stock (serves 2)`,
    comes: `title Soup week
- dish Monday's soup — leek & potato ×3
  300 g leeks
  400 g potatoes
  1 l stock
- dish Tuesday's soup — tomato ×2
  800 g tomatoes
  1 onion
  200 ml stock`,
  },
  {
    name: 'cells parted by commas',
    title: 'Cheap eats',
    description: `Item,Amount,Calories
Oats,80 g,303
Milk,250 ml,115
Banana,1,105`,
    comes: `title Cheap eats
- dish Cheap eats
  80 g Oats
  250 ml Milk
  1 Banana`,
  },
  {
    name: 'what stands below a link is no part of the method above it',
    title: 'Oat bowl',
    description: `80 g rolled oats
200 g whole milk
Method
Soak for 30 minutes.

My scale: https://quay-scales.example/one
Write to me if you cook it.`,
    comes: `title Oat bowl
- dish Oat bowl
  80 g rolled oats
  200 g whole milk
  > Soak for 30 minutes.
link My scale = https://quay-scales.example/one
left description 7 prose`,
  },
  {
    name: 'portions, amounts and numbers beside the names, oven lines, chapters of ingredients and of talk',
    title: '12 Lentil Rolls for the Freezer',
    description: `0:00 Early morning
0:08 Lentils and carrots
1:30 Rolling
2:10 Herb dip
2:50 Plum cups
3:20 Which one I'd make again

Lentil Rolls (12 rolls)
300 g red lentils
2 carrots
12 rice papers
Oven: 200C fan for 18 min from frozen
Nutrition per roll: 95 kcal, 6 g protein

Herb Dip (10 tbsp)
200 g quark
1 bunch chives

🍑 Plum cups — makes 4 (210 kcal, 15g P)
400 g skyr
6 plums
170 °C, 20 + 5 min

Camera: an old one`,
    comes: `title 12 Lentil Rolls for the Freezer
0:00 talk Early morning
0:08 dish Lentil Rolls ×12
  300 g red lentils
  2 carrots
  12 rice papers
  > Oven: 200C fan for 18 min from frozen
2:10 dish Herb dip
  200 g quark
  1 bunch chives
2:50 dish Plum cups ×4
  400 g skyr
  6 plums
  > 170 °C, 20 + 5 min
3:20 talk Which one I'd make again
left description 13 numbers
left description 15 portions
left description 19 numbers
left description 24 prose`,
  },
];
