/**
 * Words by which the lines of a description are told apart, as patterns of folded text. Common practice of
 * descriptions under videos; there is no standard, and no source.
 */

/** A list of ingredients begins; what stands behind the label is in the last group. */
export const INGREDIENTS =
  /^(?:the |all |full |my )*(?:recipe )?(?:ingredients?(?: list)?|what (?:you|you'll|you will|i) (?:need|use|used)|(?:you|you'll|you will|we|we'll) need|what goes in(?:to it)?|shopping list)\b\s*(.*)$/;

/** "Turkey tray ingredients": a dish named before its label. */
export const NAMED_INGREDIENTS = /^(.{2,80}?)\s*[-–—:]?\s+ingredients?\s*:?$/;

/** The method begins. */
export const METHOD =
  /^(?:the |full )*(?:recipe )?(?:method|instructions?|directions?|preparation|what to do|how to (?:make|cook|do)(?: it| this| them)?|steps?)(?: in brief)?\s*(?:[:.–—-]\s*(.*))?$/;

/** A list of chapters begins. */
export const CHAPTERS = /^(?:chapters?|time ?stamps?|time ?codes?|in this (?:video|episode))\s*:?$/;

/** Headings under which nothing is part of a dish. */
export const OTHER =
  /^(?:my |our |the |all |useful |more )*(?:links?|gear|kit|equipment|tools|cameras?|lights?|music|soundtrack|follow|find|connect|contact|socials?|social media|about|products?|codes?|discounts?|disclaimer|disclosure|notes?|tips?|faq|questions|swaps?|substitutions?|storage|storing|credits|watch (?:next|more)|related|more (?:videos|recipes|episodes)|support|shop|books?|sources|references|allergens?|macros?|nutrition(?:al)?(?: (?:information|facts|info))?|numbers|calories|totals?)\b/;

/** What a list names as a part of the same dish. */
export const PART =
  /^(?:for (?:the|serving|topping|garnish|dusting|frying|greasing)\b|to (?:serve|finish|garnish|top|coat|fry|taste|assemble)\b|(?:the )?(?:\w+ )?(?:sauce|dressing|toppings?|fillings?|crust|base|marinade|glaze|dough|batter|frosting|icing|garnish|crumbs?|coating|rub|spices?|spice mix|seasonings?|slaw|salsa|wet(?: ingredients)?|dry(?: ingredients)?|extras?|optional|sides?|the rest|plus|also|assembly|layers?)$)/;

/** Ingredients are said to stand somewhere else. */
export const ELSEWHERE =
  /\b(?:see|on|in|at|from|over on|head to)\b.{0,30}\b(?:blog|website|site|link|links|bio|comments?|pinned|newsletter|page|book|app)\b|\b(?:below|linked)\b/;

/** Chapters that are talk. */
export const TALK =
  /^(?:intro(?:duction)?|welcome|(?:hello|hi|hey)(?: (?:everyone|everybody|all|guys|friends|there|again))?(?=$|[!,. ])(?!-)|outro|bye|goodbye|good night|thanks?|thank you|final thoughts?|thoughts?|verdict|summary|recap|overview|results?|conclusions?|wrap(?:ping)? ?up|closing|the end|end|ending|q ?(?:&|and) ?a|questions?|faq|sponsors?|ad|advert|ad break|a word from|why|how i|tips?|rules?|the plan|plans?|start|the goals?|goals?|targets?|totals?|day totals?|the (?:total|totals|tally|numbers|results?|day)|cost|what it costs?|prices?|gym|work ?out|training|groceries|grocery|shopping|haul|weigh ?-?in|updates?|announcements?|give ?away|background|previews?|teaser|bloopers|credits|disclaimer|next (?:week|time|video|episode)|about me|(?:which|who|whose|where|when|does|did|should) |(?:is|was) (?:it|this|that) |are (?:they|these) |what (?:it|they|this|that|the day)?\s*(?:all )?(?:adds?|comes?) (?:up )?to)\b/;

/** Chapters that are a stage of the dish that is being made. */
export const STAGE =
  /^(?:the |all the )?(?:(?!pudding|stuffing|herring|string|spring|morning|evening|king)\w{3,}ing\b|(?:ingredients?|prep|preparation|assembly|marinade|storage|taste ?-?test|first bite|macros|nutrition|calories|numbers|method|what goes in)\b|in(?:to)? the (?:oven|pan|pot|fridge|freezer)\b|(?:sauce|dough|batter|toppings?)$|(?:simmer|bake|fry|cook|chop|mix|roast|boil|assemble|serve|plate|rest|cool|taste|weigh|eat)(?:$| (?:the|it|and|them)\b))/;

/** A meal alone is a dish's name only where nothing else is. */
export const MEAL =
  /^(?:(?:first |second |late |my )*(?:breakfast|brunch|lunch|dinner|tea|supper|dessert|pudding|snacks?|pre-?workout|post-?workout)|meal (?:\d|one|two|three|four|five))$/;

/** Somebody gave or paid for something (16 CFR 255 asks for plain words of it). */
export const DISCLOSURE =
  /\b(?:sponsor(?:s|ed|ing|ship)?|affiliates?|paid (?:partnership|promotion|ad)|in (?:paid )?partnership with|gifted|(?:earn|get|receive|make) (?:me )?(?:a )?(?:small |little )?commissions?|kindly sent)\b|(?:^|\s)#(?:ad|advert|sponsored|gifted)\b/;

/** What is in it that somebody may not bear. */
export const ALLERGENS = /^(?:allergens?(?: advice| information)?|(?:may )?contains?)\s*[:–—-]/;

/** Asks the viewer for something, or greets; never what a dish is called or made of. */
export const ASKS =
  /\b(?:subscribe|like (?:and|&)|comment|notification|bell|follow me|my channel|newsletter|dm me|join|download)\b/;

/** How long a dish keeps: "Keeps 4 days", "Freezes well". */
export const KEEPS =
  /^(?:(?:it|they|these|this) )?(?:(?:will )?keeps?|stores?|lasts?|freezes?|good for|best (?:within|before|eaten)) (?:well\b|for\b|up to\b|in\b|\d|(?:two|three|four|five|six|seven) )/;

/** A nutrient alone is no food: "34 g protein". */
export const NUTRIENT =
  /^(?:of )?(?:proteins?|carbs?|carbohydrates?|fats?|fib(?:re|er)|k?cals?|calories|kj|kcal each)$/;

/** Words that turn to the next dish, before what it is called. */
export const TURN =
  /\b(?:(?:first|next|last) (?:up|off)|up (?:first|next)|moving on to|(?:dish|recipe|meal) (?:number )?(?:one|two|three|four|five|six|\d)|for (?:breakfast|brunch|lunch|dinner|tea|supper|dessert|pudding|a snack|my snack))\b[,:]?/gi;

/** Words of a line that says how hot, how long and in what, and of no food. */
export const HEAT_WORDS: ReadonlySet<string> = new Set(
  (
    'a about and approx approximately around at each for in into on per side the then to top bottom both plus with without ' +
    'oven fan fan-assisted fan-forced convection conventional static gas mark air fryer airfryer air-fryer grill broiler ' +
    'microwave hob stove pan pot slow pressure cooker shelf rack middle upper lower medium high low heat hot power setting ' +
    'preheat preheated pre-heat heated bake baking roast roasting cook cooking fry air-fry frying airfry simmer boil grilled ' +
    'reheat reheating warm covered uncovered foil lid temp temperature turning once halfway c f mins'
  ).split(' '),
);

/** "Prep time: 10 min", "Ready in 20 minutes": how long a dish takes, and nothing to be done. */
export const PLANNED_TIME =
  /\b(?:time|prep|preparation|total|hands-on|active|start to finish)\b|^\W*(?:ready|done|made|on the table) (?:in|within)\b/;

/** Ways to say the portions of a dish without their name: "1 big one", "4 lunches", "2 people". Singular. */
export const ONES: ReadonlySet<string> = new Set(
  'one person people adult meal breakfast lunch dinner supper snack plate plateful bowl bowlful mug glass'.split(
    ' ',
  ),
);

/** What a dish is portioned into, and ingredients are counted in as well. Singular. */
export const VESSELS: ReadonlySet<string> = new Set(
  (
    'box jar tub container lunchbox pot ramekin cup piece pc square slice bar ball bite roll wrap cookie muffin pancake ' +
    'waffle patty fritter finger wedge parcel pouch'
  ).split(' '),
);

/** What holds several portions: how many of them a dish makes says not into how many it goes. Singular. */
export const WHOLES: ReadonlySet<string> = new Set(
  'loaf tray batch cake pie tart pizza'.split(' '),
);

/** Counted beside a title, and no yield of it: "(30 min)", "(two ways)", "(5 ingredients)". Singular. */
export const NO_YIELD: ReadonlySet<string> = new Set(
  (
    'second sec minute min hour hr day week month year way step ingredient degree time rule inch inche cm mm recipe video ' +
    'episode part dish tip pan version style euro dollar cent star idea'
  ).split(' '),
);

/** The last word of what is cooked and not bought by the piece: a line that ends so before its amount names a dish. */
export const COOKED: ReadonlySet<string> = new Set(
  (
    'soup stew curry chili chilli salad brownie cake cheesecake pie traybake bake lasagne lasagna risotto burrito casserole ' +
    'frittata omelette porridge flapjack stir-fry skillet tagine dal dahl ragu goulash paella shakshuka oat'
  ).split(' '),
);

/** A part of a dish that is made and served on its own as often: "Green sauce", not "The sauce". */
export const DISH_PART =
  /^(?!(?:for|to|the|a|an|my|wet|dry|plain|extra|soy|hot|fish)\s)[\p{L}-]+ (?:sauce|dressing|salsa|slaw|marinade|dip)$/u;

/** Numbers of all of a dish: "Per portion", "Macros", "Total". */
export const WHOLE_NUMBERS =
  /^\W*(?:macros?|nutrition|calories|kcal|totals?|day totals?|per |each\b|~|\d)/;

/** A meal anywhere in a title. */
export const MEALS =
  /\b(?:breakfast|brunch|lunch|lunches|dinner|dinners|supper|dessert|pudding|snacks?|pre-?workout|post-?workout|(?:meal|dish|recipe|bowl|plate) ?(?:\d|one|two|three|four|five))\b/;

/** What dishes are called by, beside foods and what is cooked. Singular. */
export const DISH_WORDS: ReadonlySet<string> = new Set(
  (
    'bowl sandwich shake smoothie fritter tray taco quesadilla enchilada kebab skewer parfait pot platter sub melt scramble ' +
    'mash hash medley bar ball bite treat drink cocktail sundae tart crumble trifle mousse jelly'
  ).split(' '),
);

/** A chapter called by the time of day alone. */
export const TIME_OF_DAY =
  /^(?:good |early |late |the |my |next |this |that )*(?:morning|noon|midday|afternoon|evening|night|day(?: (?:\d+|one|two|three))?)(?: (?:routine|walk|run|stuff))?$/;
