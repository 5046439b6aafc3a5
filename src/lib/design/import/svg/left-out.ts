import type { Complaint } from '../../shape';
import { check, MOST_EDGES, stop } from '../drawing-file';

/** What is told of the things of one kind that were met on the way. */
type Met = 'clipped' | 'cut off' | 'deep' | 'faulty path' | 'outside' | 'style sheet' | 'too much';

/** As many faults as anybody mends at once. */
const SHOWN = 6;

/** What was met in a drawing that is left out, doubtful or wrong. */
export class LeftOut {
	private readonly kinds = new Map<string, number>();
	private readonly met = new Set<Met>();
	private readonly faults: Complaint[] = [];

	thing(name: string): void {
		this.kinds.set(name, (this.kinds.get(name) ?? 0) + 1);
	}

	note(met: Met): void {
		this.met.add(met);
	}

	/** Something that would make the outline another one: nothing is made of the drawing. */
	fault(what: string, fix: string): void {
		if (this.faults.length < SHOWN) this.faults.push(stop(what, fix));
	}

	told(): Complaint[] {
		const noted = NOTED.filter(([met]) => this.met.has(met)).map(([, c]) => c);
		return [...this.faults, ...noted, ...this.things()];
	}

	private things(): Complaint[] {
		if (this.kinds.size === 0) return [];
		const names = [...this.kinds].slice(0, 8).map(([name, n]) => `${n} ${name.slice(0, 40)}`);
		return [
			check(
				`Left out of the SVG and not run, for they draw no outline by themselves: ${names.join(', ')}.`,
				'If one of them is the outline, turn text into paths and copies (use, symbol) into shapes before saving.',
			),
		];
	}
}

export const faultyPath = check(
	'A path in the drawing breaks off: its data cannot be read to the end.',
	'Save the drawing again, or give the outline another way.',
);

const NOTED: readonly (readonly [Met, Complaint])[] = [
	['faulty path', faultyPath],
	[
		'too much',
		check(
			`The drawing has more than ${MOST_EDGES} edges; only the first are looked at.`,
			'Save the outline alone.',
		),
	],
	[
		'deep',
		check(
			'Groups lie in groups deeper than they are followed; what is in them is left out.',
			'Ungroup the outline and save again.',
		),
	],
	[
		'clipped',
		check(
			'Things in the SVG are clipped or masked; they are read whole.',
			'Cut the outline to its true shape and take the clipping off before saving.',
		),
	],
	[
		'cut off',
		check(
			'Things in an inner svg reach beyond its frame, which cuts them off on screen; they are read whole.',
			'Look at the outline before cutting; cut it to its true shape in the drawing if it is not meant so.',
		),
	],
	[
		'style sheet',
		check(
			'A style sheet in the SVG hides, moves or sizes things; it is not followed.',
			'Save with the styles on the things themselves (inline or as attributes).',
		),
	],
	[
		'outside',
		check(
			'The SVG points to something outside itself; nothing was fetched.',
			'Save it with everything in it.',
		),
	],
];
