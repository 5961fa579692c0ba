/** A share that words say of a food, in percent. */
export interface SaidShare {
  /** What it is of; `bare` where only a percentage stands, as in 'Greek yogurt 2%'. */
  readonly of: 'fat' | 'cocoa' | 'bare';
  readonly percent: number;
}

/** A share that a food's name states: 'Chocolate, dark, 70-85% cacao solids' → cocoa from 70 to 85. */
export interface NameShare {
  readonly of: 'fat' | 'cocoa';
  readonly low: number;
  readonly high: number;
}

const NUMBER = String.raw`(\d{1,3}(?:[.,]\d{1,2})?)`;
const SHARE = new RegExp(
  String.raw`${NUMBER}\s*(?:%|per ?cent)\s*(lean|(?:milk|butter)?fat|cocoa|cacao)?`,
  'gi',
);
const LEAN_TO_FAT = /\b(\d{1,2})\s*\/\s*(\d{1,2})\b/g;
const FAT_FIRST = new RegExp(String.raw`\bfat\s*:?\s*${NUMBER}\s*%`, 'gi');

/**
 * The shares that an ingredient's words say, and its words without them. Two numbers that make a hundred are lean
 * meat and fat.
 * @example saidShares('lean ground beef 93/7') // { shares: [{ of: 'fat', percent: 7 }], rest: 'lean ground beef' }
 */
export function saidShares(text: string): {
  readonly shares: readonly SaidShare[];
  readonly rest: string;
  /** The shares as they were written. */
  readonly written: readonly string[];
} {
  const shares: SaidShare[] = [];
  const written: string[] = [];
  const take = (share: SaidShare, all: string) => {
    shares.push(share);
    written.push(all.trim());
    return ' ';
  };
  const rest = text
    .replace(LEAN_TO_FAT, (all, lean: string, fat: string) => {
      if (Number(lean) + Number(fat) !== 100) return all;
      return take({ of: 'fat', percent: Number(fat) }, all);
    })
    .replace(FAT_FIRST, (all, percent: string) => {
      return take({ of: 'fat', percent: numberOf(percent) }, all);
    })
    .replace(SHARE, (all, percent: string, word: string | undefined) => {
      return take(shareOf(numberOf(percent), (word ?? '').toLowerCase()), all);
    });
  return { shares, written, rest: rest.replace(/\s+/g, ' ').trim() };
}

function shareOf(percent: number, word: string): SaidShare {
  if (word === 'lean') return { of: 'fat', percent: 100 - percent };
  if (word.endsWith('fat')) return { of: 'fat', percent };
  return { of: word === '' ? 'bare' : 'cocoa', percent };
}

const numberOf = (digits: string) => Number(digits.replace(',', '.'));

const NAME_SHARE = new RegExp(
  String.raw`(?:${NUMBER}\s*-\s*)?${NUMBER}\s*%\s*(lean|milkfat|fat(?! free)|cacao)`,
  'gi',
);

/** The shares of fat and cocoa that a food's name states: 'Beef, ground, 93% lean meat / 7% fat' → fat of 7, twice. */
function nameShares(name: string): readonly NameShare[] {
  return [...name.matchAll(NAME_SHARE)].map((found) => {
    const high = numberOf(found[2] ?? '');
    const low = found[1] === undefined ? high : numberOf(found[1]);
    const word = (found[3] ?? '').toLowerCase();
    if (word === 'lean') return { of: 'fat', low: 100 - high, high: 100 - low };
    return { of: word === 'cacao' ? 'cocoa' : 'fat', low, high };
  });
}

/** A share in a name is as printed; whole milk is printed with 3.25 % there and sold with 3.5 %. */
const NAME_SLACK = 0.3;
/** A share on a pack is rounded to half or whole percents (common practice, no source). */
const PACK_SLACK = 0.5;

/**
 * Whether a said share and a food go together: `fits`, `against`, or `unknown` where the food says nothing of it. The
 * name is asked first, then the fat that 100 g of it hold; a bare percentage is one of fat where the food is of milk or meat.
 * @example judgeShare({ of: 'fat', percent: 7 }, { name: 'Beef, ground, 70% lean meat / 30% fat', … }) // 'against'
 */
export function judgeShare(
  { of, percent }: SaidShare,
  food: {
    readonly name: string;
    readonly fatIsMeant: boolean;
    /** Grams of fat in 100 g; null where nobody knows or asks. */
    readonly fatIn100: number | null;
  },
): 'fits' | 'against' | 'unknown' {
  const stated = nameShares(food.name).filter((share) => of === 'bare' || share.of === of);
  if (stated.length > 0) {
    const within = ({ low, high }: NameShare) =>
      percent >= low - NAME_SLACK && percent <= high + NAME_SLACK;
    return stated.some(within) ? 'fits' : 'against';
  }
  if (of === 'cocoa' || (of === 'bare' && !food.fatIsMeant) || food.fatIn100 === null) {
    return 'unknown';
  }
  const slack = Math.max(PACK_SLACK, percent * 0.05);
  return Math.abs(food.fatIn100 - percent) <= slack ? 'fits' : 'against';
}
