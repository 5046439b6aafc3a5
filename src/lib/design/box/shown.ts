import { showMm } from '../../measure';

/** Millimetres to the hundredth, for the words of a problem. */
export const shown = showMm;
