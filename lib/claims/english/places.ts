import type { PlaceWords } from '../place-words';
import { phrases } from '../words/phrases';
import { all, set } from './words';

/** Words by which a text turns to a dish or to a part of it. */
export const PLACES: PlaceWords = {
  turns: phrases(
    all(
      "first up, up first, first off, first dish, next up, up next, next dish, next is, next comes, now for, now the, now on to, on to, onto, moving on, over to, start with, starting with, started with, begin with, kick off with, kicking off with, get into, time for, then comes, last up, last dish, last but not least, finally, dish one, dish two, dish three, dish number, recipe one, recipe two, recipe three, recipe number, breakfast is, lunch is, dinner is, supper is, dessert is, for breakfast, for lunch, for dinner, for supper, for dessert, to finish, we're making, we are making, i'm making, i am making, let's make",
      true as const,
    ),
  ),
  partsOfDish: set(
    'ingredient ingredients method steps directions instructions macros macro nutrition nutritional facts value values per portion serving servings serves each makes notes note for the sauce glaze topping toppings filling dressing marinade dough crumb base you need what will',
  ),
  noNames: set(
    'one it this that these those them they other another each both all half whole thing something everything everybody',
  ),
  sizes: set('big bigger small smaller large medium little mini giant huge'),
  behindName: set('with in on from for under'),
  timeOfDay:
    /^[^\p{L}\p{N}]*(?:\d{1,2}:\d{2}\s*(?:[ap]\.?m\b\.?)?|\d{1,2}(?:\.\d{2})?\s*[ap]\.?m\b\.?)[^\p{L}\p{N}]*(?=\p{L})/iu,
  total:
    /^[^\p{L}\p{N}]*(?:grand\s+|day(?:['’]s)?\s+|daily\s+|the\s+)?total(?:s|\s+for\s+the\s+day|\s+macros)?\s*(?:[:=–—-]|\d)/iu,
  energy: /\d\s*(?:k?cals?\b|calories|kj\b)|\b(?:calories|kcal|energy)\s*:?\s*\d/i,
  nutrientNumber: /\d\s*(?:k?cals?\b|calories|kj\b|g\b|grams?\b|p\b|%)/i,
};
