import type { Allergen } from '#lib/foods/food';
import type { FoodGroup } from '#lib/foods/food-groups';

/** An allergen that a food may contain, and the rule that says so. Published only once confirmed. */
export interface AllergenProposal {
  readonly allergen: Allergen;
  /** The rule in words, for the person who confirms or denies. */
  readonly reason: string;
}

interface WordRule {
  readonly allergen: Allergen;
  readonly words: RegExp;
  /** Words that look alike and mean something else; they are taken out before the name is read. */
  readonly except?: RegExp;
  /** Why the word points to the allergen, where that is not plain. */
  readonly because?: string;
}

const PLANT_MILKS =
  /\b(?:coconut|almond|soy|rice|oat|hemp|cashew|non-?dairy|milk-?free|without|no)[ ,]+(?:milk|cream(?:er)?|butter|cheese|yogh?urt)s?\b|\b(?:peanut|sesame|almond|cashew|nut|seed|apple|cocoa|soy|sunflower|pumpkin)s? butters?\b|\bcream of (?:tartar|wheat|rice)\b|\bmilk thistle\b|\bcheese fruit\b|\bbutter (?:beans?|lettuce)\b/gi;

const NOT_WHEAT =
  /\bspaghetti squash\b|\bsquash, winter, spaghetti\b|\bgluten[- ]free\b.*|\b(?:rice|corn|cellophane|glass|mung|shirataki|bean thread|potato|almond|buckwheat|chickpea|coconut|oat|rye|barley|soy)[ ,]+(?:noodles?|pasta|flour|bread|tortillas?|cakes?)\b|\bnoodles?, (?:chinese, cellophane|japanese, soba)\b.*/gi;

/**
 * Words in a food's name, the allergen they point to, and look-alikes. Allergens: the nine of the US
 * (FALCPA 2004, FASTER Act 2021) and the fourteen of the EU (Regulation 1169/2011 Annex II).
 */
const WORD_RULES: readonly WordRule[] = [
  {
    allergen: 'milk',
    words:
      /\b(milks?|buttermilk|butter|ghee|creams?|creamy|cheeses?|cheeseburgers?|cheddar|mozzarella|parmesan|feta|ricotta|gruyere|mascarpone|halloumi|paneer|quark|skyr|yogh?urts?|kefir|whey|casein(?:ate)?|lactose|custard|milkshakes?|au gratin|alfredo|pizza|dulce de leche|non-?dairy)\b/i,
    except: PLANT_MILKS,
  },
  {
    allergen: 'egg',
    words: /\b(eggs?|mayonnaise|mayo|meringues?|omelets?|omelettes?|quiche|eggnog|aioli)\b/i,
    except: /\b(?:without|no|non) eggs?\b|\begg-?free\b|\beggless\b|\begg rolls?\b/gi,
  },
  {
    allergen: 'fish',
    words:
      /\b(fish|anchov(?:y|ies)|tuna|salmon|cod|sardines?|herring|haddock|halibut|trout|mackerel|tilapia|pollock|surimi|caviar|roe)\b/i,
    except: /\bsurimi-free\b/gi,
  },
  { allergen: 'fish', words: /\bworcestershire\b/i, because: 'made with anchovies' },
  { allergen: 'fish', words: /\bcaesar\b/i, because: 'the dressing is made with anchovies' },
  {
    allergen: 'crustaceans',
    words: /\b(crustaceans?|shrimps?|prawns?|crabs?|crabmeat|lobsters?|crayfish|crawfish|krill)\b/i,
    except: /\bcrab ?apples?\b/gi,
  },
  {
    allergen: 'molluscs',
    words:
      /\b(molluscs?|mollusks?|oysters?|clams?|mussels?|squid|calamari|octopus|cuttlefish|scallops?|abalone|whelks?|conch|snails?)\b/i,
    except:
      /\b(?:mushrooms?, oyster|oyster mushrooms?|(?:emu|ostrich), oyster|vegetable oyster|squash, summer, scallop|oyster crackers?)\b/gi,
  },
  {
    allergen: 'treeNuts',
    words:
      /\b(almonds?|hazelnuts?|filberts?|walnuts?|cashews?|pecans?|brazil ?nuts?|pistachios?|macadamias?|mixed nuts|marzipan|praline|nougat)\b/i,
  },
  { allergen: 'treeNuts', words: /\b(pine ?nuts?)\b/i, because: 'a tree nut in the US list only' },
  { allergen: 'peanuts', words: /\b(peanuts?)\b/i },
  {
    allergen: 'wheat',
    words:
      /\b(wheat|bulgur|couscous|semolina|seitan|spelt|kamut|farro|einkorn|triticale|durum|pasta|macaroni|spaghetti|lasagna|ravioli|noodles?|bread|breads|breaded|breadcrumbs|breadsticks?|crackers?|cookies?|biscuits?|croissants?|croutons?|pizza|pancakes?|waffles?|bagels?|muffins?|pretzels?|batter|all-purpose flour|plain flour|self-rai?sing flour|cake flour|bread flour|flour tortillas?|pie crust)\b/i,
    except: NOT_WHEAT,
  },
  {
    allergen: 'wheat',
    words: /\b(soy sauce|shoyu|teriyaki|hoisin)\b/i,
    except: /\btamari\b.*|\bsoy sauce made from soy \(tamari\)/gi,
    because: 'brewed with wheat',
  },
  { allergen: 'glutenCereals', words: /\b(barley|malt(?:ed)?|beer|ale)\b/i, because: 'barley' },
  { allergen: 'glutenCereals', words: /\b(rye|pumpernickel)\b/i, because: 'rye' },
  {
    allergen: 'glutenCereals',
    words: /\b(oats?|oatmeal|muesli|granola)\b/i,
    because: 'oats are in the EU list',
  },
  {
    allergen: 'glutenCereals',
    words: /\b(worcestershire)\b/i,
    because: 'often made with malt vinegar',
  },
  {
    allergen: 'soy',
    words:
      /\b(soy|soya|soy-?beans?|soya-?beans?|soymilk|tofu|tempeh|edamame|miso|natto|tamari|shoyu|teriyaki|hoisin)\b/i,
    except: /\b(?:non|without|no)[- ]soy\b/gi,
  },
  { allergen: 'sesame', words: /\b(sesame|tahini|hummus|halvah?|halava)\b/i },
  { allergen: 'celery', words: /\b(celery|celeriac)\b/i },
  { allergen: 'mustard', words: /\b(mustard)\b/i, except: /\bmustard spinach\b/gi },
  { allergen: 'sulphites', words: /\b(sul(?:f|ph)ured|sul(?:f|ph)ites?)\b/i },
  {
    allergen: 'sulphites',
    words: /\b(wines?|cider)\b/i,
    except: /\bnon-alcoholic\b.*/gi,
    because: 'usually kept with sulphites',
  },
  { allergen: 'lupin', words: /\b(lupins?)\b/i },
];

/**
 * Proposes allergens for a food from its name and, for a reference food, its SR28 group. Rules, in order:
 * the group of dairy and eggs gives egg where the name begins with 'Egg' and milk elsewhere; baked products
 * give wheat; then the words of `WORD_RULES`; wheat also gives cereals containing gluten.
 * Each allergen at most once, with the first rule that gave it. The list may be incomplete and a proposal
 * may be wrong: it is a question to the person, never published before it is confirmed.
 * `proposeAllergens('Sauce, oyster, ready-to-serve', '0600')` → molluscs, `its name says "oyster"`.
 */
export function proposeAllergens(name: string, group: FoodGroup | null): AllergenProposal[] {
  const found = new Map<Allergen, string>();
  if (group === '0100') {
    if (/^eggs?\b/i.test(name))
      found.set('egg', 'its group is dairy and eggs, its name begins with egg');
    else found.set('milk', 'its group is dairy and eggs, and it is not an egg');
  }
  if (group === '1800' && !/^leavening agents|gluten[- ]free|\brice\b|\bcorn\b/i.test(name)) {
    found.set('wheat', 'its group is baked products');
  }
  for (const rule of WORD_RULES) {
    if (found.has(rule.allergen)) continue;
    const word = rule.words.exec(rule.except ? name.replace(rule.except, ' ') : name)?.[0];
    if (!word) continue;
    const because = rule.because ? `: ${rule.because}` : '';
    found.set(rule.allergen, `its name says "${word.toLowerCase()}"${because}`);
  }
  const wheat = found.get('wheat');
  if (wheat && !found.has('glutenCereals')) {
    found.set('glutenCereals', `wheat is a cereal containing gluten, and ${wheat}`);
  }
  return [...found].map(([allergen, reason]) => ({ allergen, reason }));
}
