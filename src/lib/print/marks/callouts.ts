import {
	type Ink,
	type Mark,
	type PathMark,
	type TextMark,
	circlePath,
	line,
	type Spot,
	textBox,
	type Bounds,
	wrapped,
} from '../drawing';
import { words } from './stage';
import { LabelSlots } from './label-slots';

/**
 * A thing on a drawing and what it is called: in full, or by its mark alone where it is crowded.
 */
export interface Named {
	readonly text: string;
	readonly short: string;
	readonly at: Spot;
	readonly ink?: Ink;
	/**
	 * Does this stretch of paper show the thing and nothing else? Then the words may stand there
	 * without a leader.
	 */
	holds(box: Bounds): boolean;
}

const SIZE = 2.7;
const RINGS = [5, 8, 11, 15, 20, 26, 33, 41, 50];
const TURNS = 16;
const LEADING = 4.4;

/** Paper that names may stand on, and what is drawn there already. */
interface Ground extends Bounds {
	readonly drawn: readonly Mark[];
}

/**
 * Names beside their things, clear of each other and of all lines: on the thing itself where there
 * is room, else near it with a leader line (ISO 128-2: narrow, ending in a dot on the thing). Where
 * no place is clear of lines, one over a line is taken; those that find none at all are listed
 * below; `below` is the height of that list.
 */
export function callouts(
	names: readonly Named[],
	ground: Ground,
): { marks: Mark[]; below: number } {
	const { x, y, width, height, drawn } = ground;
	const room = { x: x + 1, y: y + 0.5, width: width - 2, height: height - 1 };
	const taken = new LabelSlots(room);
	const clear = new LabelSlots(room);
	for (const slots of [taken, clear]) slots.keepOff(drawn);
	clear.keepOffLines(drawn);
	const marks: Mark[] = [];
	const rest: string[] = [];
	// From the top down, so that leaders seldom cross.
	for (const named of [...names].sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x)) {
		const found = placed(named, clear) ?? placed(named, taken);
		if (found === null) {
			rest.push(named.text);
			continue;
		}
		// Whatever stands already keeps off the next names, and its leader too.
		for (const slots of [taken, clear]) {
			slots.keepOff(found);
			slots.keepOffLines(found);
		}
		marks.push(...found);
	}
	const lines = wrapped(rest.join('  ·  '), width - 4, SIZE).filter((l) => l !== '');
	marks.push(...lines.map((l, i) => words(x + 2, y + height + 3 + i * LEADING, l, { size: SIZE })));
	return { marks, below: lines.length * LEADING };
}

function placed(named: Named, slots: LabelSlots): Mark[] | null {
	const { at } = named;
	const inked = (m: TextMark): TextMark => (named.ink === undefined ? m : { ...m, ink: named.ink });
	for (const text of new Set([named.text, named.short])) {
		const on = slots.free(upon(text, at).filter((m) => named.holds(textBox(m))));
		if (on) return [inked(on)];
		const beside = slots.free(
			round(text, at).filter((m) => slots.isClear(leaderSteps(textBox(m), at))),
		);
		if (beside) return [...leader(beside, at), inked(beside)];
	}
	return null;
}

function mark(text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): TextMark {
	return words(x, y, text, { anchor, halo: true, weight: 'semibold', size: SIZE });
}

/** On the thing, at its spot or a little off. */
function upon(text: string, at: Spot): TextMark[] {
	const steps = [0, 4, -4, 8, -8, 14, -14];
	return steps.flatMap((dy) => steps.map((dx) => mark(text, at.x + dx, at.y + dy + 1, 'middle')));
}

/** Places in widening rings, above and beside first. */
function round(text: string, at: Spot): TextMark[] {
	return RINGS.flatMap((r) =>
		[...Array(TURNS).keys()].map((i) => {
			const turn = ((i % 2 ? -1 : 1) * Math.ceil(i / 2) * 2 * Math.PI) / TURNS - Math.PI / 2;
			const [dx, dy] = [r * Math.cos(turn), r * Math.sin(turn)];
			const anchor = Math.abs(dx) < 0.4 * r ? 'middle' : dx > 0 ? 'start' : 'end';
			return mark(text, at.x + dx, at.y + dy + 1, anchor);
		}),
	);
}

/** From the nearest point of the words to the thing: thin and grey, no line of the work. */
function leader(text: TextMark, at: Spot): Mark[] {
	return [
		{ kind: 'path', steps: leaderSteps(textBox(text), at), line: 'hair', ink: 'pencil' },
		{ kind: 'path', steps: circlePath(at.x, at.y, 0.5), fill: 'pencil' },
	];
}

function leaderSteps(box: Bounds, at: Spot): PathMark['steps'] {
	const near = (value: number, from: number, long: number): number =>
		Math.max(from, Math.min(value, from + long));
	const x = near(at.x, box.x - 0.5, box.width + 1);
	const y = near(at.y, box.y - 0.5, box.height + 1);
	return line(x, y, at.x, at.y);
}
