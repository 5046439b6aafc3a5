import {
	nth,
	fromLitres,
	showVolume,
	toLitres,
	volumeUnit,
	type Ruler,
	wholeShares,
} from '../../../measure';
import type { Chamber, VolumeLine } from '../../../design';

/** The air of a chamber as it is printed, in words with their unit. */
interface VolumeLines {
	readonly gross: string;
	readonly deductions: readonly {
		readonly what: string;
		readonly volume: string;
		/** With the sign it is reckoned with. */
		readonly signed: string;
	}[];
	readonly net: string;
	/** Was a deduction rounded the other way so that the column adds up as printed? */
	readonly adjusted: boolean;
}

export const ADJUSTED = 'Deductions are rounded so that the column adds up as printed.';

/** Marks of the printed figure in one unit: hundredths of a litre, thousandths of a cubic foot. */
const MARKS = { L: 100, ft3: 1000 } as const;

/**
 * Gross and net are rounded as they are; the deductions share what is between the two printed
 * figures, those with the largest fraction rounded up first. Nobody who adds up the column on the
 * bench is left with a hundredth.
 */
export function volumeLines(chamber: Chamber, ruler: Ruler): VolumeLines {
	const unit = volumeUnit(ruler);
	const marks = (litres: number): number => fromLitres(litres, unit) * MARKS[unit];
	const text = (whole: number): string => showVolume(toLitres(whole / MARKS[unit], unit), ruler);
	const gross = Math.round(marks(chamber.gross));
	const net = Math.round(marks(chamber.net));
	const exact = chamber.deductions.map((d: VolumeLine) => marks(d.litres));
	const shared = wholeShares(exact, gross - net);
	return {
		gross: text(gross),
		deductions: chamber.deductions.map((d, i) => {
			const volume = text(nth(shared, i));
			return { what: d.what, volume, signed: lessText(volume) };
		}),
		net: text(net),
		adjusted: shared.some((n, i) => n !== Math.round(nth(exact, i))),
	};
}

/** What is taken off; a cut-out gives air back, and its figure is below nothing. */
const lessText = (volume: string): string =>
	/^[-−]/.test(volume) ? `+ ${volume.slice(1)}` : `− ${volume}`;
