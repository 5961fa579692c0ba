import type { Found } from '#lib/method/found-words';
import type { ShownRule } from '#lib/method/rules';

/** A proposal as the form draws it; the texts of its fields are apart. */
export interface MethodOffer {
  readonly steps: readonly {
    readonly key: string;
    readonly title: string;
    readonly hands: boolean;
    readonly inOven: boolean;
    readonly sentence: string;
    readonly found: readonly Found[];
    readonly remark: string;
    /** "Touches raw meat, poultry, fish or egg: chicken"; null where nothing was read of it. */
    readonly contact: string | null;
  }[];
  readonly rules: readonly {
    readonly name: string;
    readonly title: string;
    readonly words: string;
    readonly basis: string;
    readonly adds: readonly string[];
  }[];
  readonly shown: readonly ShownRule[];
  readonly unit: 'C' | 'F';
}

/** The fields of a step and of a rule. */
export const stepFields = (key: string) => ({
  tick: `step-${key}`,
  low: `low-${key}`,
  usual: `usual-${key}`,
  high: `high-${key}`,
  oven: `oven-${key}`,
  contact: `contact-${key}`,
});
export const ruleFields = (name: string) => ({ tick: `rule-${name}`, minutes: `minutes-${name}` });
