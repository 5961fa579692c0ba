import type { JudgingWords } from '../language';
import { set } from './words';

/** Words around a number that tell what it is held against. */
export const JUDGING: JudgingWords = {
  clauses: /[,;:()—–]|\b(?:and|then|but|while|or)\b/i,
  beside: /\b(?:with|beside|next\s+to|under|over|on|alongside|instead\s+of|not)\b.*$/is,
  otherAmount: /[\d.;\n]|\band\b/,
  cooked: /\b(?:cooked|once cooked|after cooking)\b/i,
  raw: /\b(?:raw|uncooked|dry|before cooking)\b/i,
  called: {
    slice: /\b(?:slices?|squares?|wedges?|bars?)\b/i,
    piece:
      /\b(?:pieces?|muffins?|patt(?:y|ies)|cookies?|balls?|rolls?|wraps?|tacos?|pancakes?|fritters?|bars?)\b/i,
    portion: /\b(?:portions?|servings?|bowls?|plates?)\b/i,
  },
  half: /\bhalf\b|½/i,
  oven: 'oven',
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
  notSalty: /\b(no (added )?salt|without salt|unsalted|salt[- ]?free)\b/i,
};
