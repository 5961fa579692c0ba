import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { Clause } from '#lib/method/clauses';
import type { Place, Setting } from '#lib/method/method-step';
import type { PlaceAt } from '#lib/method/places';
import { phrase } from '#lib/method/words-at';

/** Where the food of a sentence stands so far; changed as its clauses are read in order. */
export interface Standing {
  /** What is in use; null before anything is. */
  place: Place | null;
  /** It was put there, and not only heated beforehand. */
  given: boolean;
  /** Taken off the heat. */
  off: boolean;
  /** Under a lid. */
  covered: boolean;
  /** In a machine that is on no list. */
  machine: boolean;
}

interface Asked {
  readonly tokens: readonly Token[];
  readonly clause: Clause;
  /** The places named in the clause. */
  readonly named: readonly PlaceAt[];
  readonly standing: Standing;
  readonly settings: readonly Setting[];
  readonly timed: boolean;
}

/** Prepared in the pan it is in, where it is in one. */
const IN_THE_PAN =
  /^(?:stir|whisk|toss|add|mix|turn|flip|pour|season|baste|crack|beat|combine|swirl|scrape|break|let|allow|start|begin|continue|carry|resume|repeat|stud|deglaze|sprinkle|fold|tip|spoon|shake|press|bind|work|keep|spread|close|move)$/;

/**
 * Where an action takes place: where the clause says, else where the food already is, else where its verb usually
 * happens. Changes what stands where for the clauses after it.
 */
export function placeOf(asked: Asked): { readonly place: Place; readonly preheats: boolean } {
  const { tokens, clause, standing } = asked;
  const text = phrase(tokens, clause.from, clause.next);
  const named = asked.named.filter(({ from }) => from !== clause.verbAt);
  lid(text, clause, standing);
  const out =
    /\b(?:turn|switch) off the (?:oven|grill|air fryer)\b|\b(?:turn|switch) the (?:oven|grill|air fryer) off\b/.test(
      text,
    );
  if (out) {
    standing.place = named.find(({ place }) => place !== 'none')?.place ?? standing.place;
    standing.given = true;
    return { place: 'none', preheats: false };
  }
  const off = named.some(
    ({ naming, place, byHeat }) => naming === 'off' && (byHeat || place !== 'none'),
  );
  if (off) {
    standing.off = true;
    standing.place = null;
    standing.given = false;
  }
  const machine = named.some((each) => each.machine && each.naming !== 'off');
  if (machine) standing.machine = true;
  const preheats = isPreheat(clause, text, named);
  const place = machine ? 'none' : preheats ? preheated(named) : where(asked, named, text);
  if (place !== 'none') {
    const said = named.some((each) => each.place === place && each.naming === 'in');
    standing.given =
      !preheats && (said || clause.kind === 'put' || !/^(?:prep|set|check)$/.test(clause.kind));
    standing.place = place;
    standing.off = false;
    standing.machine = false;
  }
  // 'Line the basket of an air fryer': spoken of, so that it is the one that is meant next.
  const spoken = named.find(
    (each) => each.naming === 'named' && !/^(?:none|burner)$/.test(each.place),
  );
  if (place === 'none' && spoken && standing.place === null && !standing.off)
    standing.place = spoken.place;
  if (/^(?:drain|strain)$/.test(clause.base)) standing.place = null;
  return { place, preheats };
}

function lid(text: string, clause: Clause, standing: Standing): void {
  if (
    /\b(?:uncovered|uncover|without (?:a|the) lid|lid off|(?:remove|lift|take off) the lid)\b/.test(
      text,
    )
  ) {
    standing.covered = false;
  } else if (
    /\b(?:covered|(?:lid|hood) (?:on|down|closed|shut)|with (?:a|the) lid|put (?:a|the) lid|under a lid|lidded)\b/.test(
      text,
    )
  ) {
    standing.covered = true;
  } else if (clause.base === 'cover') {
    const over = /\bcover (?:[\w-]+ ){0,3}with (?!a lid|the lid|a tight|its lid|foil)/.test(text);
    if (!over) standing.covered = true;
  }
}

/** The heating of something empty: an oven, an air fryer, a grill, a dry pan. */
function isPreheat(clause: Clause, text: string, named: readonly PlaceAt[]): boolean {
  if (/^pre-?heat$/.test(clause.base)) return true;
  if (clause.base === 'set')
    return (
      clause.kind === 'set' && named.some(({ place }) => place === 'oven' || place === 'air fryer')
    );
  if (
    clause.base !== 'heat' &&
    clause.base !== 'warm' &&
    !(clause.base === 'turn' || clause.base === 'switch' || clause.base === 'light')
  )
    return false;
  if (clause.base === 'turn' || clause.base === 'switch' || clause.base === 'light') {
    return (
      /\b(?:turn|switch|light) (?:[\w-]+ )?(?:on|up)?\b/.test(text) &&
      /\bon\b/.test(text) &&
      named.some(({ place }) => place !== 'none' && place !== 'burner')
    );
  }
  return /\b(?:heat|warm) (?:up )?(?:(?:the|your|a|an|another|large|small|dry|heavy|heavy-based|non-stick|nonstick|cast-iron|cast|iron|wide|medium|deep|thick|fan|ridged|empty|clean) )*(?:oven|air fryer|air-fryer|grill|broiler|barbecue|barbeque|bbq|pan|frying pan|skillet|wok|griddle|griddle pan|grill pan|saucepan|pot|casserole|dutch oven)\b/.test(
    text,
  );
}

function preheated(named: readonly PlaceAt[]): Place {
  return named.find(({ naming, byHeat }) => naming !== 'off' && !byHeat)?.place ?? 'oven';
}

/** The place that a clause names for its food; what it is heated by alone gives way to what was named before. */
function said({ standing }: Asked, named: readonly PlaceAt[]): Place | null {
  const ins = named.filter(({ naming, machine }) => naming === 'in' && !machine);
  const own = ins.filter(({ byHeat }) => !byHeat);
  const last = own.filter(({ place }) => place !== 'burner').at(-1) ?? own.at(-1);
  if (last) return last.place;
  if (ins.length === 0) return null;
  return standing.place === 'grill' || standing.place === 'oven' ? standing.place : 'burner';
}

function where(asked: Asked, named: readonly PlaceAt[], text: string): Place {
  const { clause, standing, settings, timed } = asked;
  const { kind, base } = clause;
  const here = said(asked, named);
  const stands = standing.given ? standing.place : null;
  switch (kind) {
    case 'oven':
      if (here === 'air fryer' || here === 'grill' || here === 'microwave') return here;
      return here === null && /^(?:air fryer|grill)$/.test(standing.place ?? '')
        ? (standing.place ?? 'oven')
        : 'oven';
    case 'grill':
      return here === 'burner' && !named.some(({ byHeat }) => byHeat) ? 'burner' : 'grill';
    case 'airFry':
      return 'air fryer';
    case 'microwave':
      return 'microwave';
    case 'freeze':
      return here === 'fridge' ? 'fridge' : 'freezer';
    case 'chill':
      return here === 'freezer' || here === 'none' ? here : 'fridge';
    case 'wait': {
      if (here !== null)
        return here === 'burner' && !named.some(({ byHeat }) => byHeat) ? 'none' : here;
      if (/\binside\b|\bin it\b|\bin there\b/.test(text) && standing.place !== null)
        return standing.place;
      const stays = /^(?:leave|sit|stand|set|wait)$/.test(base) && !standing.off;
      return stays && stands !== null && stands !== 'burner' && stands !== 'grill'
        ? stands
        : 'none';
    }
    case 'boil':
      if (here !== null && here !== 'none') return here;
      if (standing.off && base === 'steam') return 'none';
      if (standing.machine) return 'none';
      return stands === 'oven' || stands === 'microwave' || stands === 'air fryer'
        ? stands
        : 'burner';
    case 'fry':
      if (here !== null && here !== 'none' && here !== 'fridge') return here;
      if (standing.place === 'grill' && /^(?:brown|caramelise|caramelize|soften)$/.test(base))
        return 'grill';
      return stands === 'air fryer' || stands === 'grill' || (stands === 'oven' && base !== 'fry')
        ? stands
        : 'burner';
    case 'heat':
      if (standing.machine && here === null) return 'none';
      if (here !== null && here !== 'fridge') return here;
      return heated(asked, text);
    case 'put':
      if (here !== null) return here;
      if (clause.verbAt === null && clause.from > 0) return standing.place ?? 'none';
      return timed && settings.length > 0
        ? (standing.place ?? 'oven')
        : timed && stands
          ? stands
          : 'none';
    case 'set':
      return (
        named.find(({ byHeat, naming }) => !byHeat && naming !== 'off')?.place ??
        (/\boven\b/.test(text)
          ? 'oven'
          : standing.off
            ? 'none'
            : (standing.place ?? (settings.length > 0 ? 'oven' : (here ?? 'none'))))
      );
    case 'check':
      return 'none';
    case 'prep':
      if (here !== null) return here;
      if (standing.off || !IN_THE_PAN.test(base)) return 'none';
      return standing.place === 'burner' || standing.place === 'grill'
        ? standing.place
        : standing.given &&
            standing.place === 'oven' &&
            /^(?:continue|carry|resume|start|begin)$/.test(base)
          ? 'oven'
          : 'none';
  }
}

/** Where 'cook' and its like happen with no place said: where the food is, in the oven by its degrees, else a burner. */
function heated({ settings, standing, clause }: Asked, text: string): Place {
  const at = standing.place;
  if (at !== null && at !== 'fridge' && at !== 'freezer') return at;
  const celsius = settings.map(({ value, unit }) =>
    unit === 'F' ? ((value - 32) * 5) / 9 : unit === 'gas' ? 200 : value,
  );
  if (
    /\b(?:on|in) (?:a|the|two|your) (?:[\w-]+ )?(?:baking|oven|roasting) (?:sheet|tray|tin|dish)\b/.test(
      text,
    )
  )
    return 'oven';
  const hot = celsius.some((value) => value >= 140);
  const bath = /\b(?:oil|fat|syrup|sugar|caramel)\b/.test(text);
  return hot && !bath && clause.base !== 'bring' ? 'oven' : 'burner';
}
