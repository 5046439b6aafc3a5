import fc from 'fast-check';
import { MATERIALS, type Asked } from '../design/box/make';
import type { Form } from './section';

/* Random boxes of the forms that the second way knows, and what the job says of them. */

const mm = (low: number, high: number): fc.Arbitrary<number> =>
	fc.integer({ min: low * 10, max: high * 10 }).map((n) => n / 10);

export const forms: fc.Arbitrary<Form> = fc.record({
	kind: fc.constantFrom('plain' as const, 'slanted' as const, 'stepped' as const),
	width: mm(350, 1000),
	height: mm(350, 600),
	depth: mm(350, 600),
	top: mm(250, 700),
	step: fc.record({ x: mm(60, 180), y: mm(60, 180) }),
});

const KEYS = ['front', 'back', 'top', 'bottom', 'left', 'right', 'step-face', 'step-top'] as const;
export type WallBoards = Readonly<Record<(typeof KEYS)[number], string>>;
const board = fc.constantFrom('ply-18', 'ply-17', 'mdf-12', 'mdf-25');
export const wallBoards: fc.Arbitrary<WallBoards> = fc.record(
	Object.fromEntries(KEYS.map((key) => [key, board])) as Record<
		(typeof KEYS)[number],
		typeof board
	>,
);

export const ENDS = ['over', 'between'] as const;

const MEASURED = new Map(MATERIALS.map((m) => [m.id, Number(m.measured)]));
export const measured = (material: string): number => MEASURED.get(material) ?? NaN;

export const thickness =
	(boards: WallBoards) =>
	(key: string): number =>
		measured(boards[key as keyof WallBoards]);

/** The job that asks for this box, by its outside. */
export function asked(
	form: Form,
	boards: WallBoards,
	more: { joint: Asked['joint']; fit: (typeof ENDS)[number] },
): Asked {
	const known = form.kind === 'stepped' ? KEYS : KEYS.slice(0, 6);
	return {
		shape: shapeOf(form),
		joint: more.joint,
		ends: { fit: more.fit },
		boards: Object.fromEntries(known.map((key) => [key, { material: boards[key] }])),
	};
}

function shapeOf({ kind, width, height, depth, top, step }: Form): Asked['shape'] {
	if (kind === 'plain') return { kind, width, height, depth };
	if (kind === 'slanted')
		return { kind, width, height, face: 'back', lean: { by: 'depths', bottom: depth, top } };
	return {
		kind,
		width,
		height,
		depth,
		corner: 'bottom-back',
		stepHeight: step.y,
		stepDepth: step.x,
	};
}
