declare module 'wcag-contrast' {
  /** Contrast ratio of two hexadecimal colours. */
  export function hex(a: string, b: string): number;
}
