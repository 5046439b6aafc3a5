import { snap, printAngle, printForBench, printLength, type Ruler } from '../../measure';

/**
 * Figures of one page on the job's ruler. It remembers whether any of them was rounded, so that the
 * page can say so.
 */
export interface Figures {
	/** As fine as the ruler goes. */
	length(l: number): string;
	/** To what a fence or a tape can be set: a tenth of a millimetre, or the inch fraction. */
	bench(l: number): string;
	/** `620 × 340`, to what can be set. */
	size(length: number, width: number): string;
	/** An angle in degrees, to a tenth. */
	angle(degrees: number): string;
	readonly rounded: boolean;
	readonly unit: Ruler['unit'];
}

export function figuresOn(ruler: Ruler): Figures {
	let rounded = false;
	const keep = (printed: { text: string; rounded: boolean }) => {
		rounded ||= printed.rounded;
		return printed.text;
	};
	const bench = (l: number) => keep(printForBench(snap(l), ruler));
	return {
		length: (l) => keep(printLength(snap(l), ruler)),
		bench,
		size: (length, width) => `${bench(length)} × ${bench(width)}`,
		angle: (degrees) => printAngle(degrees, ruler.decimal),
		get rounded() {
			return rounded;
		},
		unit: ruler.unit,
	};
}

/** What the title block calls the ruler. */
export function rulerName(ruler: Ruler): string {
	if (ruler.unit === 'in') return `inches to 1/${ruler.fraction}`;
	return ruler.unit === 'mm' ? 'millimetres' : 'centimetres';
}

export function roundedNote(ruler: Ruler): string {
	const to =
		ruler.unit === 'in' ? `1/${ruler.fraction} in` : ruler.unit === 'mm' ? '0.1 mm' : '0.01 cm';
	return `Figures rounded to ${to.replace('.', ruler.decimal)}; the plan keeps them exact.`;
}
