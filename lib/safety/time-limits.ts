/** Above this air temperature the two hours become one: 90 °F (USDA FSIS) as thousandths of a °C. */
export const HOT_AIR_MILLI_C = Math.floor(((90 - 32) * 5000) / 9);
const TWO_HOURS_S = 7200;
const ONE_HOUR_S = 3600;

/**
 * How long perishable food may stand out of refrigeration in all, in seconds, at an air temperature in
 * thousandths of a °C: two hours, one above 90 °F (USDA FSIS, consumer rule). Exactly 90 °F is two hours.
 *
 * @example timeOutLimitS(22_000) → 7200; timeOutLimitS(33_000) → 3600
 */
export function timeOutLimitS(airMilliC: number): number {
  return airMilliC > HOT_AIR_MILLI_C ? ONE_HOUR_S : TWO_HOURS_S;
}

/** A temperature taken while food cools: seconds since any fixed moment, thousandths of a °C. */
export interface CoolingReading {
  readonly atS: number;
  readonly milliC: number;
}

/** FDA Food Code 3-501.14(A): 57 °C (135 °F) → 21 °C (70 °F) in 2 h, and → 5 °C (41 °F) in 6 h in all. */
export const COOLING = {
  fromMilliC: fahrenheit(135),
  midMilliC: fahrenheit(70),
  endMilliC: fahrenheit(41),
  midWithinS: TWO_HOURS_S,
  endWithinS: 3 * TWO_HOURS_S,
} as const;

export type CoolingVerdict = 'kept' | 'missedMid' | 'missedEnd' | 'open';

/**
 * Whether readings of cooling food keep the two stages of FDA Food Code 3-501.14(A). The clock starts
 * at the last reading at or above 135 °F. `open`: too few readings to say, and no limit passed yet.
 */
export function coolingVerdict(readings: readonly CoolingReading[]): CoolingVerdict {
  const sorted = [...readings].sort((a, b) => a.atS - b.atS);
  const startS = sorted.filter((r) => r.milliC >= COOLING.fromMilliC).at(-1)?.atS;
  if (startS === undefined) return 'open';
  const after = sorted.filter((r) => r.atS > startS);
  const latestS = after.at(-1)?.atS ?? startS;
  const reached = (milliC: number): number | undefined =>
    after.find((reading) => reading.milliC <= milliC)?.atS;
  const judge = (milliC: number, withinS: number): boolean | null => {
    const atS = reached(milliC);
    if (atS !== undefined) return atS - startS <= withinS;
    return latestS - startS >= withinS ? false : null;
  };
  const mid = judge(COOLING.midMilliC, COOLING.midWithinS);
  if (mid === false) return 'missedMid';
  const end = judge(COOLING.endMilliC, COOLING.endWithinS);
  if (end === false) return 'missedEnd';
  return mid === true && end === true ? 'kept' : 'open';
}

function fahrenheit(degrees: number): number {
  return Math.round(((degrees - 32) * 5000) / 9);
}
