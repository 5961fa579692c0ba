import {
  ADJECTIVES,
  ADVERBS,
  MODIFIERS,
  PREPARATION,
  SIZES,
} from '#lib/episode/read-ingredient-words';
import type { FoodWords } from '../language';
import { phrases } from '../words/phrases';
import { phrasesOf, set } from './words';
import { DONE, GOT_OF, LEFT_OUT, LONG_SYNONYMS, TAKES_KIND } from './food-names';

/** Foods as cooks name them, in their singulars (common practice, no source). */
const HEADS = set(`
  almond anchovy apple apricot artichoke arugula asparagus aubergine avocado bacon bagel baguette banana barley basil
  bean beansprout beef beer beet beetroot berry biscuit blackberry blueberry bran bread breadcrumb brie brioche broccoli
  broth brownie buckwheat bulgur bun burger burrata butter buttermilk cabbage cacao caper capsicum caramel carrot cashew
  cauliflower celery cereal cheddar cheese cherry chestnut chicken chickpea chili chilli chive chocolate chorizo chutney
  cider cilantro cinnamon clementine coconut cod coffee coke cola coleslaw collard coriander corn cornflour cornstarch
  courgette couscous crab cracker cranberry cream creme crisp crouton crumb cucumber cumin curd currant custard dal date
  dill dip dressing duck edamame egg eggplant escarole espresso falafel farro fennel feta fig fillet fish flour focaccia
  fruit garlic gelatine gherkin ghee ginger gnocchi gouda granola grape grapefruit gravy guacamole haddock halibut halloumi ham
  hazelnut herb honey houmous hummus icing jalapeno jam juice kale ketchup kimchi kiwi lamb lasagne leek lemon lemonade
  lentil lettuce lime linguine liver lobster mackerel mango maple margarine marmalade marshmallow mascarpone mayo
  mayonnaise meat melon milk mince mint miso molasses mozzarella mushroom mussel mustard naan nectarine noodle nori nut
  nutmeg oat oatmeal oats oil olive onion orange oregano orzo oyster paneer pancake pancetta papaya paprika parmesan
  parsley parsnip passata pasta pastry pea peach peanut pear pecan penne pepper pepperoni pesto pickle pie pineapple
  pistachio pita pitta pizza plum polenta pomegranate popcorn pork potato prawn pretzel prosciutto prune pudding pumpkin
  quark quinoa radish raisin raspberry relish rhubarb rice ricotta risotto roll rosemary saffron sage salad salami salmon
  salsa salt sardine sauerkraut sausage scallion scallop seed seitan semolina sesame shallot shrimp skyr slaw smoothie
  soda sorbet sourdough soy soya spaghetti spinach sprinkle sprout squash squid sriracha steak stock strawberry stuffing sugar
  sultana swede sweetcorn syrup tahini tangerine tea tempeh thyme toast tofu tomato tortilla trout tuna turkey
  turmeric turnip tzatziki vanilla veal vinegar vodka waffle walnut watercress watermelon whey whisky wine wrap yam yeast yoghurt
  yogurt zaatar zucchini drumstick breast thigh wing rib loin chop cutlet powder sauce paste spray chip flake kernel
  cube granule leaf stem zest rind yolk white latte cappuccino mocha cocoa kefir cheesecake cookie cake muffin croissant donut doughnut ale
  lager gin rum prosecco champagne sherry port mirin sake bouillon concentrate nugget floret nib sambal harissa furikake dukkah
  gochujang aioli remoulade vinaigrette ranch creamer tapenade chimichurri raita streusel fries wedge bap pumpernickel rye
  spud kumara rajma roti chapati paratha poppadom papad poha idli dosa sambar rasam chana chole bhindi okra methi jaggery jeera masala atta rava sooji curd tamarind snag rasher black-pudding barley tinned-tomato passata crumpet scone porridge granola sprinkles courgetti rocket broccolini bok-choy pak-choi edamame silverbeet pumpkin gochugaru doubanjiang ciabatta flatbread cracker oatcake ricecake crispbread sundae gelato marzipan praline nougat toffee fudge
  water wasabi chia pasty pasties shell filling topping batter dough crust glaze marinade brine amaranth
  millet teff spelt freekeh vermicelli rigatoni fusilli macaroni tagliatelle fettuccine pappardelle farfalle
  conchiglie ravioli tortellini cannelloni lasagna ditalini ramen udon soba spaetzle toor moong masoor urad channa
  dhal daal dahl khichdi pulao biryani upma bhaji pakora samosa kheer ladoo barfi halwa lassi malai khoya mawa
  asafoetida hing ajwain kalonji amchur fenugreek chipotle ancho guajillo poblano serrano habanero cayenne pimento
  pimiento bonnet tomatillo nopales masa hominy cotija queso crema pico guac adobo tostada totopo bok pak choi
  daikon lotus bamboo natto tamari ponzu dashi kombu wakame bonito katsuobushi shichimi umeboshi gyoza dumpling
  wonton tempura panko teriyaki hoisin lemongrass galangal kaffir makrut pandan belacan kecap laksa rendang satay
  krupuk chard kohlrabi celeriac salsify samphire fiddlehead endive radicchio frisee mizuna sorrel nettle dandelion
  plantain cassava taro jicama yuca mangetout tenderstem cavolo nero romanesco sprouts greens microgreens marrow
  shallots beansprouts wholemeal wholewheat wheatgerm oatbran linseed flaxseed psyllium hemp grouse pheasant venison
  rabbit goat mutton brisket chuck rump sirloin ribeye flank topside silverside shin shank oxtail kidney tripe
  gammon hock trotter gizzard giblet biltong boerewors kielbasa bratwurst frankfurter andouille nduja mortadella
  bresaola speck lardon guanciale jerky bologna bream monkfish pollock hake plaice turbot snapper tilapia
  catfish perch eel kipper whitebait calamari octopus cuttlefish clam scampi langoustine crayfish caviar surimi
  crabstick whelk cockle winkle camembert stilton roquefort gorgonzola gruyere emmental provolone manchego pecorino
  grana padano asiago havarti edam colby monterey labneh fromage wensleydale stracciatella fraiche casein satsuma
  pomelo yuzu quince gooseberry redcurrant blackcurrant elderberry elderflower lychee rambutan durian jackfruit
  guava persimmon dragonfruit mulberry loganberry boysenberry starfruit tamarillo feijoa cantaloupe honeydew
  nectarines prunes sultanas medjool macadamia hazelnuts pecans cashews pinenut tigernut peanuts almonds walnuts
  allspice cardamom clove anise juniper sumac baharat chermoula berbere dukka marjoram tarragon chervil lovage bay
  nigella poppyseed peppercorn piccalilli horseradish hollandaise bechamel baba
  ganoush romesco gremolata ragu stevia erythritol xylitol sweetener sucralose aspartame nectar treacle fondant
  ganache meringue frosting cornbread pikelet bannock lavash injera puri arepa pupusa matzo breadstick tonic
  seltzer kombucha cordial tequila bourbon brandy vermouth marsala shaoxing wedges digestive shortbread
  flapjack tiffin trifle jelly jello pavlova mousse tvp mycoprotein creatine collagen gelatin agar
  pectin xanthan arrowroot tapioca   corned hash kedgeree peas butterbean borlotti cannellini haricot flageolet lupin fava
  filo phyllo arborio basmati muesli bicarb bicarbonate agave lard balsamic dijon flax stout cajun applesauce veg xanthan gluten seasoning
`);

/** What ends the name of a food behind another word of it, and is none alone: pork shoulder, taco shells. */
const TAILS = set(
  'shoulder belly neck leg cheek wheat puree husk gum extract shell seed wrapper shoot seasoning crystal finger krispie knuckle tenderloin escalope',
);

const MODIFIER_WORDS = set(`
  vanilla sour ice peanut almond coconut olive sesame sunflower avocado soy oyster fish chili chilli hot sweet pickled
  smoked cottage cream goat blue parmesan greek flat pine chia pumpkin poppy flax hemp cooking maple golden agave date
  balsamic rice wine apple cider orange lemon lime tomato bell red green spring cherry plum black kidney white brown
  pinto butter lima baked refried string dark milk chocolate cocoa protein whey whole wheat rye corn sweetcorn oat
  rolled steel ground turkey chicken beef pork lamb salmon cod tuna egg garlic onion mustard curry bay basil mint
  coriander parsley peppermint mixed dried crispy fried bacon wholegrain rapeseed vegetable canola condensed evaporated
  double single heavy whipping clotted icing caster powdered baking self raising sparkling diet tonic ginger
  orange cranberry iced black green herbal filter sun hash potato tortilla pita panko bread graham digestive
  hundreds marinated streaky cured parma serrano string mozzarella halloumi feta burger hot dog barbecue
  bbq worcestershire worcester teriyaki hoisin brown tartar tartare cheese caesar ranch italian thai japanese   basmati jasmine wild arborio egg rice udon soba maris russet sweet butternut acorn
  napa savoy gem romaine iceberg rocket mangetout snow sugar snap broad french runner tenderstem broccoli
  chestnut button portobello shiitake oyster king jumbo prawn shrimp salted roasted unsalted flaked ground desiccated
  mascarpone passion star dragon bone stock bouillon nutritional smoked coffee cold brew protein energy light dark banana
  pasta pizza noodle steak lentil chickpea bean cheddar ham avocado beetroot pecan walnut hazelnut cashew strawberry raspberry blueberry skimmed semi kalamata sea table kosher fleur garam apricot pita
  naan crusty garlicky bagel burger brioche salad fennel caraway celery cumin mushroom
  gram toor moong masoor urad channa scotch cayenne chipotle piri peri bok pak choi lemongrass brazil mulled wholemeal wholewheat rainbow cavolo chuck rump sirloin crème creme soured jersey clover runny soya sourdough pitta flour wonton filo puff shortcrust poached vegan veggie plant turkish skyr gochugaru tahini medjool mince ribeye flank chorizo merguez stem crystallised candied glace maraschino haricot borlotti cannellini fava sushi risotto porridge pearl giant bulgur breaded kaffir cajun fajita taco brussels sichuan short ox split new english xanthan psyllium ramen lasagne rotisserie bamboo vital elbow
`);

/** How good or how it is done, said of a food before its name. */
const SAID_OF = set(
  'raw anything something everything nothing stuff good nice lovely homemade home-made proper own favourite favorite crunchy creamy store bought leftover little big some those these that this my your more extra cheap firm soft silken heaped heaping scant level generous rounded packed dessert large medium small lean tinned canned frozen jarred thick crusty buttered warm cold hot bought quality best quick simple simple the a an of handful bit lot couple few spoonful drizzle splash pinch dollop sprinkle glug knob side glass cup slice piece pile heap load scoop shaving shavings dusting dash',
);

export const FOODS: FoodWords = {
  heads: HEADS,
  modifiers: MODIFIER_WORDS,
  tails: TAILS,
  plain: new Set([
    ...PREPARATION,
    ...ADVERBS,
    ...ADJECTIVES,
    ...MODIFIERS,
    ...SIZES.keys(),
    ...SAID_OF,
  ]),
  labels: phrases(
    phrasesOf(
      'full fat, low fat, half fat, reduced fat, fat free, zero fat, whole fat, low sodium, reduced salt, low salt, reduced sugar, sugar free, no added sugar, no sugar, low sugar, high protein, low carb, low calorie, reduced sodium, nonfat, non fat, lowfat, gluten free, dairy free, lactose free, light, lighter',
    ).map((words) => [words, true]),
  ),
  prepared: set(
    'baked drained cooked raw peeled dry uncooked trimmed net boned podded unpeeled defrosted deboned',
  ),
  synonyms: new Map([
    ['mayo', 'mayonnaise'],
    ['spud', 'potato'],
    ['tattie', 'potato'],
    ['garbanzo', 'chickpea'],
    ['sultana', 'raisin'],
    ['ketchup', 'ketchup'],
    ['daal', 'dal'],
    ['dhal', 'dal'],
    ['parmesan', 'parmesan'],
    ['maize', 'corn'],
    ['courgette', 'zucchini'],
    ['aubergine', 'eggplant'],
    ['coriander', 'cilantro'],
    ['chilli', 'chili'],
    ['yoghurt', 'yogurt'],
    ['prawn', 'shrimp'],
    ['houmous', 'hummus'],
    ['rocket', 'arugula'],
    ['scallion', 'spring onion'],
    ['pitta', 'pita'],
    ['capsicum', 'bell pepper'],
    ['oatmeal', 'oats'],
    ['oat', 'oats'],
    ['spaghetti', 'spaghetti'],
    ['cornflour', 'cornstarch'],
    ['beet', 'beetroot'],
    ['soya', 'soy'],
    ['noodle', 'noodle'],
    ['stock', 'broth'],
    // As captions hear it; nobody weighs flowers.
    ['flower', 'flour'],
    ['bicarb', 'baking soda'],
    ['bicarbonate', 'baking soda'],
  ]),
  longSynonyms: LONG_SYNONYMS,
  takesKind: TAKES_KIND,
  done: DONE,
  formerly: phrases(
    phrasesOf('used to, back when, back then, years ago, in the past, once upon a time').map(
      (words) => [words, true],
    ),
  ),
  nowadays: set('now nowadays today but so instead these'),
  leftOut: LEFT_OUT,
  gotOf: GOT_OF,
  nothing: set('water ice steam'),
  uncounted: set(
    'water filling topping batter dough crust marinade brine shell greens glaze ice steam sauce dressing topping seasoning herb meat fruit salad powder leaf fillet seed nut cube chip crumb spray flake paste white yolk zest meal roll wrap burger pizza pie cake stem stock dip stuffing mince egg-wash port rye ranch gravy-boat wing breast thigh rib chop wedge kernel granule floret crisp date sage vanilla mint fish veg brownie pancake pudding muffin',
  ),
  blockers: phrases(
    phrasesOf(
      "bother with, bother with the, dog gets the, dog has the, cat gets the, no, not, not the, smells of, smell of, smelled of, tastes of, taste of, reminds me of, colour of, color of, as, as much as, have to eat, need to eat, had to eat, don't need, do not need, don't do, not doing, could put, can put, could have, could do, might do, can do, optional, optionally, optional :, without, instead of, rather than, could, could add, could use, can use, can add, can't do, can't have, cannot have, can't eat, cannot eat, don't eat, don't like, can't stand, not a fan of, you can, you could, tastes like, taste like, looks like, like a, like, swap, swapped, replaces, replace, replaced, replacing, skip, skipped, leave out, left out, leaves out, never, don't, don't add, don't use, if you want, if you like, hate, allergic to, for the dog, better than, less than a, than a, than, as a, for, minus, hold the, out of, avoid, vegan, smells like, smell like, not even, any, would be, might, maybe, was going to, ran out of, used to, substitute, sub, size of, is not, would put, would add, would use, would have, wouldn't, doesn't have, does not have, don't have, do not have, didn't have, hasn't got, haven't got, isn't a, isn't, aren't, wasn't, if you've got, if you have, if you fancy, hers had, his had, theirs had, hers has, his has, theirs has, theirs have, pretend this is a, pretend it's a, this is a, it's a, it is a, this isn't a, call it a, call this a, calling it a, are not, was not, it's not, last week's, last month's, last year's, last time's, last video's, last episode's",
    ).map((words) => [words, true]),
  ),
  noName: /(?:ly|ed|ing|day|ish)$/,
  sayings: phrases(
    phrasesOf(
      'piece of cake, cup of tea, my jam, bring home the bacon, cheesy, full of beans, spill the beans, cherry on top, easy peasy, butter fingers, apple of, salt of the earth, icing on the cake, hot potato, in a nutshell, cream of the crop, smart cookie, big cheese, bread and butter, egg on my face, couch potato, chicken out, bread winner, sour grapes, go bananas, nuts about, peas in a pod, pinch of salt, pepper mill, salt cellar, egg timer, cake tin, muffin tin, loaf tin, pie dish, pizza stone, pizza cutter, bread knife, rice cooker, coffee table, coffee machine, tea towel, cheese grater, garlic press, lemon squeezer, potato masher, salad spinner, fish slice, pasta water, olive green, lime green, mustard yellow, mint green, cherry red, salmon pink, chocolate brown, sandwich box, egg box, butter knife, rolling pin, salad bowl, ice water, chicken scratch, salt and pepper shaker, fish out of water',
    ).map((words) => [words, true]),
  ),
};
