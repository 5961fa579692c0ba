/** The seed of every plan that is shown or downloaded: page, calendar and text tell the same order. */
export const PLAN_SEED = 1;
