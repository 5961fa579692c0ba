import type { JudgingWords } from '../judging-words';
import { set } from './words';

/** What food is cooked or kept in, by its names; longer ones first. */
const APPLIANCES: ReadonlyMap<string, string> = new Map([
  ['air fryer', 'air fryer'],
  ['slow cooker', 'slow cooker'],
  ['pressure cooker', 'pressure cooker'],
  ['food processor', 'blender'],
  ['frying pan', 'pan'],
  ['microwave', 'microwave'],
  ['toaster', 'toaster'],
  ['blender', 'blender'],
  ['freezer', 'freezer'],
  ['fridge', 'fridge'],
  ['refrigerator', 'fridge'],
  ['grill', 'grill'],
  ['broiler', 'grill'],
  ['skillet', 'pan'],
  ['wok', 'pan'],
  ['pan', 'pan'],
  ['hob', 'hob'],
  ['stove', 'hob'],
  ['saucepan', 'pan'],
  ['water', 'hob'],
  ['oven', 'oven'],
]);

/** Words around a number that tell what it is held against. */
export const JUDGING: JudgingWords = {
  clauses: /[,;:()—–]|\b(?:and|then|but|while|or)\b/i,
  beside: /\b(?:with|beside|next\s+to|under|over|on|alongside|instead\s+of|not)\b.*$/is,
  otherAmount: /[\d.;\n]|\band\b/,
  cooked: /\b(?:cooked|after\s+cooking)\b/i,
  raw: /\b(?:raw|uncooked|dry|before\s+cooking)\b/i,
  called: {
    slice: /\b(?:slices?|squares?|wedges?|bars?)\b/i,
    piece:
      /\b(?:pieces?|muffins?|patt(?:y|ies)|cookies?|balls?|rolls?|wraps?|tacos?|pancakes?|fritters?|bars?)\b/i,
    portion: /\b(?:portions?|servings?|bowls?|plates?)\b/i,
  },
  half: /\bhalf\b|½/i,
  shareOfIt:
    /\b(?:an?|one)\s+(\p{L}+)(?=\s+(?:of\s+(?:it|this|that|the|them|all)\b|each\b)|\s*(?:[.,;!?]|$))/giu,
  aShare: (name) => `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`,
  keptIn: /\s(?:in|with|without|from|for)\s/i,
  then: /\b(?:then|another|plus|more|further|after\s+that|followed\s+by)\b/i,
  inAppliance: new RegExp(
    `^\\s*(?:in|on|under|at|inside|into)\\s+(?:the\\s+|a\\s+|an\\s+|my\\s+|your\\s+)?(?:(?:hot|boiling|salted|simmering)\\s+){0,2}(${[...APPLIANCES.keys()].join('|').replaceAll(' ', '\\s+')})\\b`,
    'i',
  ),
  appliances: APPLIANCES,
  byOven:
    /\bovens?\b|\bbake[sd]?\b(?!\s+(?:powder|soda|sale))|\broast(?:s|ed)?\s+(?:it|them|that|this|these|those|for|the|until|till|at)\b|\b(?:tin|tray|sheet|rack)\b.*\bin\s+for\b/gi,
  besideOven:
    /\b(?:boil|simmer|fry|saut[eé]|sear|whisk|whip|cream\s+(?:it|that|them|this|the|until|till|together)|beat|knead|stir|soak|marinate|microwave|poach|steam|toast|blanch|blend|blitz|rinse|chop|soften|sweat)(?:s|ed|ing|ning|ping)?\b|\b(?:fried|fries|creaming|simmering|boiling|kettle|saucepan|skillet|frying\s+pan|hob|stove|fridge|freezer)\b/gi,
  meanwhile:
    /\b(?:meanwhile|in\s+the\s+meantime|at\s+the\s+same\s+time|while\s+(?:that|it|they|those|these|this)(?:['’](?:s|re)|\s+(?:is|are|cooks?|bakes?|roasts?|goes))?)\b/gi,
  aTime: /\b(?:min|mins|minutes?|hours?|hrs?)\b/gi,
  nextClause: /\b(?:and|then|but|before|meanwhile|while|once)\b/i,
  wholeTime:
    /\b(?:ready|done|table|plate|plated|finish|whole|total|altogether|all|dinner|lunch|breakfast|supper|tea|dish|recipe|meal|everything|scratch)\b/i,
  small: set(
    'a an and are at be but by for from get go goes got have i if in into is it its just like my no not of on one or our so that the them then they this to up was we with you your min mins minute minutes hour hours degrees degree about around until till out off over',
  ),
  endings: /(?:ing|ed|es|e)$/,
  // 'chopping', 'stirred': the doubled letter is no part of the word.
  doubled: /([bdgmnprt])\1$/,
  cuts: set(
    'breast thigh leg wing drumstick fillet filet loin tenderloin chop steak mince rump shoulder shank belly rib cutlet',
  ),
  sweet:
    /\b(sugars?|honey|syrups?|molasses|treacle|agave|nectar|dextrose|fructose|glucose|maltose|sucrose|jaggery|panela|muscovado|demerara|caramel|jams?|jelly|jellies|marmalade|condensed milk|juice concentrate|concentrated juice)\b/i,
  notSweet: /\b(sugar snap|sugar[- ]?free|no (added )?sugars?|unsweetened|without sugar)\b/i,
  salty: /\bsalt\b/i,
  lessOrMore: /^(lower|higher|less|reduced|more)\b/i,
  more: /^(higher|more)\b/i,
  veryLow: /^(very|super|ultra|really) low\b/i,
  percentBefore: /(%|per ?cent)\s*-?$/i,
  extra: /^extra/i,
  notSalty: /\b(no (added )?salt|without salt|unsalted|salt[- ]?free)\b/i,
};
