import { TICKS_PER_MM } from '../../../measure';

/** What one thing takes of one chamber, cubic ticks. */
export interface Taken {
	readonly room: number;
	readonly what: string;
	readonly volume: number;
}

const CUBIC_TICKS_PER_LITRE = (100 * TICKS_PER_MM) ** 3;

export const litres = (cubicTicks: number): number => cubicTicks / CUBIC_TICKS_PER_LITRE;
export const cubicTicks = (litres: number): number => litres * CUBIC_TICKS_PER_LITRE;
