import type { CutLine, EdgeName, Operation, PartFace } from '../../design';
import { nth } from '../../measure';
import { type Figures, firm, formText, placeText, radiiText } from '../wording';

/** What is done, and the places it is done at where there are several. */
export interface OperationText {
	readonly text: string;
	readonly points: readonly string[];
}

/** One operation in words; what it says is enough to do it. */
export function operationText(op: Operation, seen: PartFace, f: Figures): OperationText {
	switch (op.kind) {
		case 'outline':
			return outlineText(op.form, f);
		case 'edge':
			return alone(`Cut the ${nameOf(op.edge)} square, through ${lineText(op.line, f)}`);
		case 'bevel':
			return alone(bevelText(op, f));
		case 'rabbet':
			return formed(`Rabbet ${op.n}: ${f.bench(op.depth)} deep`, op, f);
		case 'cut':
			return op.depth === null
				? formed(`Cut out ${op.n} ${op.name}`, op, f)
				: formed(`Rout ${op.n} ${op.name}: ${f.bench(op.depth)} deep`, op, f);
		case 'holes':
			return holesText(op, f);
		case 'groove':
			return grooveText(op, f);
		case 'place':
			return formed(`Mark ${op.n} ${op.name}${seen === 'back' ? ', glued on' : ''}`, op, f);
	}
}

type Of<K extends Operation['kind']> = Extract<Operation, { kind: K }>;

const alone = (text: string): OperationText => ({ text, points: [] });

function outlineText(form: Of<'outline'>['form'], f: Figures): OperationText {
	const { run, points } = formText(form, '', f);
	if (form.kind !== 'rectangle') return { text: `Cut to the outline${run && `: ${run}`}`, points };
	const { x, y } = form.box;
	const whole = x === 0 && y === 0;
	return alone(
		whole ? `Round the corners: ${radiiText(form.radii, f)}` : `Cut to the outline: ${run}`,
	);
}

function formed(
	text: string,
	{ n, form }: { readonly n: number; readonly form: Of<'cut'>['form'] },
	f: Figures,
): OperationText {
	const { run, points } = formText(form, `${n}`, f);
	return {
		text: run === '' ? `${text}:` : `${text}${text.includes(':') ? ', ' : ': '}${run}`,
		points,
	};
}

function nameOf({ letter, side }: EdgeName): string {
	return letter === '' ? `${side} edge` : `${side} edge (${letter})`;
}

function lineText([a, b]: CutLine, f: Figures): string {
	return `${placeText(a, f)} and ${placeText(b, f)}`;
}

function bevelText(op: Of<'bevel'>, f: Figures): string {
	const { edge, tilt, mitre, up, sharp, set } = op;
	const name = edge.letter === '' ? 'Bevel' : `Bevel ${edge.letter}`;
	const gauge = mitre === 0 ? '' : `, gauge turned ${f.angle(mitre)}`;
	const how = `${name}: ${edge.side} edge tilt ${f.angle(tilt)}${gauge}, ${sharp ? 'sharp edge' : 'LONG'} ${up}`;
	if (set === null) return how;
	if (set.by === 'line') return `${how}; ${up} up, through ${lineText(set.line, f)}`;
	const at = `${how}; ${up} up, ${nameOf(set.against)} at the fence, ${firm(`${f.bench(set.distance)} to the blade`)}`;
	return set.slips
		? `${at}; its sharp edge lies on the table at the fence: clamp a straight strip to the fence, down on the table, so that it cannot slip under, and measure from the strip`
		: at;
}

function holesText({ n, name, diameter, at, ...op }: Of<'holes'>, f: Figures): OperationText {
	const deep = deepText(op, f);
	const size = firm(`Ø ${f.bench(diameter)}`);
	if (at.length === 1)
		return alone(`Hole ${n} ${name}: ${size}${deep}, ${placeText(nth(at, 0), f)}`);
	return {
		text: `Holes ${n} to ${n + at.length - 1} ${name}: ${at.length} × ${size}${deep}`,
		points: at.map((p, i) => firm(`${n + i} ${placeText(p, f)}`)),
	};
}

function deepText({ depth, deep }: Pick<Of<'holes'>, 'depth' | 'deep'>, f: Figures): string {
	if (depth !== null) return `, ${f.bench(depth)} deep`;
	return deep === undefined ? '' : `, ${deep}`;
}

function grooveText(op: Of<'groove'>, f: Figures): OperationText {
	const round = op.round.length === 0 ? '' : `, round ${op.round.join(', ')} too`;
	const stops = op.stops.length === 0 ? '' : `; it stops at ${op.stops.join(', ')}`;
	const ends = op.ends.length === 0 ? '' : '; its middle runs, end to end:';
	return {
		text: `Rout the knife groove: ${f.bench(op.offset)} from the edge, ${f.bench(op.width)} wide, ${f.bench(op.depth)} deep${round}${stops}${ends}`,
		points: op.ends.map(([a, b]) => `${firm(`${placeText(a, f)} to`)} ${placeText(b, f)}`),
	};
}
