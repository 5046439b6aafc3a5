import { toMm } from '../../measure';

/** Millimetres to the hundredth, for the words of a problem. */
export const shown = (l: number): string => String(Math.round(toMm(l) * 100) / 100);
