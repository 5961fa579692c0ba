import type { Mend } from '#lib/episode/edit-schema';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import type { Portion, Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Episode, Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import type { Pack } from '#lib/episode/stock-schema';
import { UNSAID_SEGMENT } from '#lib/episode/unsaid';
import type { EntityName, RowInput } from '#lib/store/rows';

/** A row's own columns: without its id, its parent and its place among its siblings. */
type Columns<E extends EntityName, Owner extends string = never> = Omit<
  RowInput<E>,
  'id' | 'position' | Owner
>;

/** The columns of an episode itself; a form's patch or a new row is made of them. */
export function episodeColumns(episode: Episode): Columns<'Episode', 'kitchenId'> {
  const { title, hook, region, publishOn, rate, anythingElse, disclosure, energyStep } = episode;
  const { dropFrame } = episode;
  return {
    title,
    hook,
    region,
    publishOn,
    rateNum: rate.num,
    rateDen: rate.den,
    dropFrame,
    anythingElseKind: anythingElse?.kind ?? null,
    anythingElseWhat: anythingElse?.kind === 'notCounted' ? anythingElse.what : null,
    disclosure,
    energyStep,
  };
}

export function segmentColumns(segment: Segment): Columns<'Segment', 'episodeId' | 'recipeId'> {
  const { kind, title, batches, eaten, inFrame, outFrame, chapter, plannedS } = segment;
  const { spareTakes, spareScope, pickupReserve, washUpS, ate, filmedWhen } = segment;
  const mass = ate.kind === 'mass' ? ate : null;
  return {
    ...claimsColumns(segment.claims),
    kind,
    title,
    batchesNum: batches.num,
    batchesDen: batches.den,
    eatenNum: eaten.num,
    eatenDen: eaten.den,
    ateKind: ate.kind,
    atePermille: ate.kind === 'byEye' ? ate.permille : null,
    ateLowMg: mass?.lowMg ?? null,
    ateMg: mass?.valueMg ?? null,
    ateHighMg: mass?.highMg ?? null,
    inFrame,
    outFrame,
    chapter,
    plannedS,
    spareTakes,
    spareScope,
    pickupReserve,
    washUpS,
    filmedWhen,
  };
}

/** What claim words said of a dish are judged by; all three are null where nobody said. */
export function claimsColumns(claims: Segment['claims']) {
  return {
    proteinPermille: claims?.proteinPermille ?? null,
    raccMg: claims?.raccMg ?? null,
    claimsMeal: claims?.meal ?? null,
  };
}

/** The columns of a segment of which nobody has said more than its kind, title and length. */
export const UNSAID_SEGMENT_COLUMNS = {
  chapter: UNSAID_SEGMENT.chapter,
  filmedWhen: UNSAID_SEGMENT.filmedWhen,
  pickupReserve: UNSAID_SEGMENT.pickupReserve,
  ...claimsColumns(UNSAID_SEGMENT.claims),
};

/** How words are to be read; a patch sets all of these columns. */
export function mendColumns(
  mend: Mend,
): Columns<'ReadingMend', 'episodeId' | 'textId' | 'words' | 'before' | 'after'> {
  const about = mend.kind === 'about' ? mend : null;
  return {
    kind: mend.kind,
    heard: mend.kind === 'heard' ? mend.text : null,
    segmentId: about?.segmentId ?? null,
    portionId: about?.portionId ?? null,
    scope: about?.scope ?? null,
  };
}

export function lineColumns(
  line: RecipeLine,
): Columns<'RecipeLine', 'recipeId' | 'madeFromId' | 'madeFromRev'> {
  const { text, quantity, unit, measureName, foodId, match, orFoodId } = line;
  const { state, asBought, planned, note } = line;
  const { leftBehind, cookMethod, retention, bounded } = line;
  const left = leftBehind.kind === 'mass' ? leftBehind : null;
  const behind = leftBehind.kind === 'none' ? null : leftBehind;
  return {
    text,
    lowNum: quantity?.low.num ?? null,
    lowDen: quantity?.low.den ?? null,
    highNum: quantity?.high.num ?? null,
    highDen: quantity?.high.den ?? null,
    unit,
    measureName,
    foodId,
    match,
    orFoodId,
    state,
    asBought,
    plannedLowMg: planned?.lowMg ?? null,
    plannedMg: planned?.valueMg ?? null,
    plannedHighMg: planned?.highMg ?? null,
    leftKind: leftBehind.kind,
    leftLowMg: left?.lowMg ?? null,
    leftMg: left?.valueMg ?? null,
    leftHighMg: left?.highMg ?? null,
    leftWhere: behind?.where ?? 'pan',
    leftMade: behind?.made ?? 'alike',
    cookMethod,
    retention,
    bounded: bounded.length > 0 ? bounded : null,
    spoiltByTake: line.spoiltByTake,
    note,
    shopNote: line.shopNote,
  };
}

export function portionColumns(portion: Portion): Columns<'Portion', 'recipeId'> {
  return {
    kind: portion.kind,
    name: portion.name,
    ofCount: portion.kind === 'count' ? portion.of : null,
    massMg: portion.kind === 'mass' ? portion.massMg : null,
    shareNum: portion.kind === 'byEye' ? portion.share.num : null,
    shareDen: portion.kind === 'byEye' ? portion.share.den : null,
    permille: portion.kind === 'byEye' ? portion.permille : null,
  };
}

export function recipeColumns(recipe: Recipe): Columns<'Recipe', 'forkedFromId'> {
  const { title, method, cooking } = recipe;
  return {
    title,
    method,
    moisturePermille: cooking?.moisturePermille ?? null,
    fatPermille: cooking?.fatPermille ?? null,
    cookingSpreadPermille: cooking?.spreadPermille ?? null,
    cookingSource: cooking?.source ?? null,
  };
}

export function stepColumns(step: Step): Columns<'Step', 'segmentId'> {
  const { title, role, lowS, usualS, highS, choose, hands, burners, racks, oven } = step;
  const { coreMilliC, restS, onCamera, daylight, note } = step;
  const { contact, evening, cameraSetUp, applianceId, counter } = step;
  return {
    title,
    role,
    lowS,
    usualS,
    highS,
    chooseMinS: choose?.minS ?? null,
    chooseMaxS: choose?.maxS ?? null,
    hands,
    burners,
    racks,
    ovenId: oven?.ovenId ?? null,
    ovenMilliC: oven?.milliC ?? null,
    coreMilliC,
    restS,
    contact,
    evening,
    cameraSetUp,
    applianceId,
    counter,
    onCamera,
    daylight,
    note,
  };
}

export function dayColumns(day: FilmingDay): Columns<'FilmingDay', 'kitchenId'> {
  const { date, kind, startMin, wrapByMin, mealGapMin, lightMarginMin, outfit } = day;
  return { date, kind, startMin, wrapByMin, mealGapMin, lightMarginMin, outfit };
}

export function kitchenColumns(kitchen: Kitchen): Columns<'Kitchen'> {
  const { name, zone, lat, lon, burners } = kitchen;
  const { cameraChangeS, counterPlaces, cleanDownS, videoMbps } = kitchen;
  const { shelfUnits, priceDriftPermille } = kitchen;
  return {
    ...{ name, zone, lat, lon, burners, cameraChangeS, counterPlaces, cleanDownS, videoMbps },
    ...{ shelfUnits, priceDriftPermille },
  };
}

export function ovenColumns(oven: Oven): Columns<'Oven', 'kitchenId'> {
  const { name, racks, coldMilliC, mostMilliC, heatSPerC, coolSPerC } = oven;
  return { name, racks, coldMilliC, mostMilliC, heatSPerC, coolSPerC };
}

export function packColumns(pack: Pack): Columns<'Pack', 'foodId'> {
  const { name, netMg, netMl, drainedMg, gtin, stepMg } = pack;
  return { name, netMg, netMl, drainedMg, gtin, stepMg };
}
