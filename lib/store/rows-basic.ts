import { z } from 'zod';

/** Columns that many tables share. An integer column holds 32 bits on both databases. */
export const INT_MAX = 2_147_483_647;

export const id = z.string().min(1).max(64);
export const text = (max: number) => z.string().max(max);
export const whole = z.int().min(0).max(INT_MAX);
export const positive = z.int().min(1).max(INT_MAX);
export const signed = z.int().min(-INT_MAX).max(INT_MAX);
export const position = whole;
export const localDate = z.iso.date();
export const anchor = z.enum(['start', 'end']);

/** An instant, given as a Date or as the text that the journal keeps. */
export const instant = z.union([z.date(), z.iso.datetime().transform((at) => new Date(at))]);

/** A JSON object, kept as it is. */
export const jsonObject = z.record(z.string(), z.json());
