/** What a step of the filming day and its kitchen can hold: the file format, the forms and the reader of methods keep to it. */

/** Thousandths of a degree Celsius that an oven is set to. */
export const OVEN_MILLI_C = { min: 30_000, max: 350_000 } as const;
/** Thousandths of a degree Celsius inside the food. */
export const CORE_MILLI_C = { min: 0, max: 120_000 } as const;
/** Seconds: seven days. */
export const LONGEST_STEP_S = 7 * 86_400;
/** Characters of the method that a dish keeps. */
export const LONGEST_KEPT_METHOD = 8000;
/** How many steps a segment holds. */
export const MOST_STEPS = 200;
/** How many shots a segment holds. */
export const MOST_SHOTS = 200;
/** How many ovens and appliances a kitchen holds, and how many shots its pattern for every dish. */
export const MOST_OVENS = 6;
export const MOST_APPLIANCES = 12;
export const MOST_HOUSE_SHOTS = 24;
/** How many other episodes a filming day holds beside one. */
export const MOST_ALSO = 7;
