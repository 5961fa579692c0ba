import type { Patterns } from '../language';

/** Turns of speech of plain text that no phrase can say, since words may stand between. */
export const PATTERNS: Patterns = {
  severalDishes:
    /\b(?:day|days|dishes|meals|recipes|dinners|lunches|breakfasts|menu|everything)\b/i,
  namesInRow:
    /(?<![\p{L}\d])(?:k?cals?|calories|energy|protein|prot|carbs?|fat|fib(?:re|er)|sugars?|salt|[pcf])(?:[ \t]*\/[ \t]*(?:k?cals?|calories|energy|protein|prot|carbs?|fat|fib(?:re|er)|sugars?|salt|[pcf])){1,5}(?![\p{L}\d])/iu,
  lettersInRow:
    /(?:(?<![\p{L}\d])(?:k?cals?|calories)[ \t]*[/|,·•:-]?[ \t]*|(?<![\p{L}\d.,]))(?:\d+(?:\.\d+)?[ \t]?g?[ \t]?[pcf](?:[ \t]*[/|,·•&+-]?[ \t]*)){2,3}(?![\p{L}\d])/u,
  fan: /\b(?:fan|convection)\b/i,
  noFan:
    /\b(?:without|no|not|non|never|turn off|switch off)\b[^.,;:]{0,16}\b(?:fan|convection)\b|\b(?:fan|convection)(?: is| switched| turned)? off\b/i,
  ovenDegrees:
    /(?<before>\b(?:fan|convection)(?:[ -](?:oven|assisted|forced|bake))?(?: (?:at|to))?[ :]+)?(?<![\d.,])(?<number>\d{3})(?![\d.,]*\d)(?:\s*(?:°|º|deg(?:rees?)?\b)?\s*(?<unit>[CF])(?:elsius|ahrenheit)?(?!\p{L})|\s*(?:°|º|deg(?:rees?)?\b)|(?=\s*(?:[/(),;]|or\b|$))|(?<=(?:fan|convection)[^/,;]{0,16})|(?=[\s(]*(?:fan|convection)\b))(?<behind>[\s(]*(?:with (?:the |a |its )?)?(?:fan|convection)\b(?![ :]+\d{3}))?/iu,
  reaches:
    /\b(?:gets?|got|getting|comes?|came|goes|is|['’]s)\s+(?:all\s+the\s+way\s+)?(?:up\s+)?to(?:\s+(?:about|around|at\s+least|over|a|an|the))*$/i,
  reachedBy:
    /\b(?:meat|mince|chicken|turkey|duck|goose|pork|beef|lamb|veal|venison|bacon|ham|gammon|burgers?|patt(?:y|ies)|sausages?|meatballs?|meatloaf|steaks?|chops?|thighs?|drumsticks?|breasts?|wings?|ribs?|fish|salmon|cod|trout|tuna|fillets?|prawns?|shrimp|pink|juices|thermometer|probe)\b/i,
  behindPronoun: /^(?:my|our|your|his|her|their|the|this|these|those)$/,
  meals: /\b(?:meals|dishes|recipes|dinners|lunches|breakfasts|suppers|teas)\b/i,
  servesSoMany:
    /\b(?:serves?|feeds|serving|makes)\s+(?:just\s+|only\s+)?(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|twelve)(?!\s*(?:[-–—]|to\b|or\b)\s*\w)\b/iu,
  slices: /\b(slice|square|wedge|bar|strip)s?\b/i,
  ownsOrIs: /['’]s$/,
  endOfNumber: /[\d,:;()–—]|\b(?:and|but|so|then|plus)\b/,
  takenByNumber:
    /(?:calories|cals?|kcal|kj|kilojoules|grams?|g|mg|milligrams|protein|carbs?|fat|fib(?:er|re)|sodium|salt|sugars?)\s+(?:(?:in|for|per|of|on|with)\s+)?$/,
};
