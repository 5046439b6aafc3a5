import type { Drawing, Mark } from '../../../src/lib/print/drawing/drawing';
import { figure } from '../sheet/saw-from-words';

/*
 * A bench that knows nothing but the words of a printed card: it lays the blank down, does what
 * each line says, and ends with two faces and a list of what was made in them. All sizes in units
 * of the ruler the card is printed on.
 */

export type Spot = readonly [number, number];
export type Ring = readonly Spot[];

export interface Made {
	/** The first word: Hole, Cut, Rout, Rabbet, Mark. */
	readonly verb: string;
	readonly name: string;
	readonly depth: number | null;
	readonly diameter: number | null;
	/** Middles of round holes, or the corners of what is cut or marked. */
	readonly places: readonly Spot[];
	/** All round it, its roundings and curves in short chords; of one with corners. */
	readonly ring: Ring;
	/** Its places are to be joined by a bent batten. */
	readonly smooth: boolean;
}

export interface Worked {
	/** The face named up, both faces as that one is seen. */
	readonly up: string;
	readonly upper: Ring;
	readonly lower: Ring;
	readonly made: readonly Made[];
	/** What is said of the knife groove. */
	readonly groove: string | null;
	/** Places of its outline are to be joined by a bent batten. */
	readonly smooth: boolean;
}

/** The lines of a card beside its boxes to tick, and the words above its drawing. */
export function linesOf({ marks }: Pick<Drawing, 'marks'>): { head: string; lines: string[] } {
	const texts: string[][] = [[]];
	for (const mark of marks) {
		if (isTick(mark)) texts.push([]);
		else if (mark.kind === 'text') texts.at(-1)!.push(mark.text.replaceAll('\u00a0', ' '));
	}
	const [head, ...rest] = texts.map((t) => t.join(' '));
	return { head: head!, lines: rest };
}

const isTick = (mark: Mark): boolean =>
	mark.kind === 'path' &&
	mark.line === 'narrow' &&
	Math.abs(Number(mark.steps[0]![1]) - 0.3) < 1e-9;

/** What comes of a blank once all is done that a card says. */
export function worked(card: Pick<Drawing, 'marks'>): Worked {
	const { head, lines } = linesOf(card);
	const up = /(outside|inside|front|back) up;/.exec(head)![1]!;
	const size = /(?:^|, )([\d .,/]+?) · (?:BLANK )?([\d .,/]+) × ([\d ,./]+?)(?= ·| \w+ up)/.exec(
		head,
	);
	const [thick, across, upward] = size ? size.slice(1).map((t) => figure(t)) : [0, 0, 0];
	const bench = new Bench(across!, upward!, thick!, up);
	for (const line of lines) bench.take(line);
	return bench;
}

class Bench implements Worked {
	upper: Ring;
	lower: Ring;
	readonly made: Made[] = [];
	groove: string | null = null;
	smooth = false;

	constructor(
		private readonly across: number,
		private readonly high: number,
		private readonly thick: number,
		readonly up: string,
	) {
		this.upper = box(0, across, 0, high);
		this.lower = this.upper;
	}

	take(line: string): void {
		if (line.startsWith('Cut to the outline') || line.startsWith('Round the corners'))
			this.outline(line);
		else if (/^Cut the \w+ edge/.test(line)) this.square(line);
		else if (line.startsWith('Bevel')) this.bevel(line);
		else if (line.startsWith('Rout the knife groove')) this.groove = line;
		else this.made.push(madeOf(line));
	}

	private outline(line: string): void {
		this.upper = this.lower = outlineOf(line, this.upper);
		this.smooth = line.includes('a smooth curve');
	}

	private square(line: string): void {
		const side = /^Cut the (\w+) edge/.exec(line)![1]!;
		const [p, q] = spotsIn(line.split(' through ')[1]!);
		this.upper = kept(this.upper, p!, q!, side);
		this.lower = kept(this.lower, p!, q!, side);
	}

	private bevel(line: string): void {
		const [, side, tilt, face] = /^Bevel(?: \S+)?: (\w+) edge tilt ([\d.,]+)°,.*; (\w+) up, /.exec(
			line,
		)!;
		const slope = this.thick * Math.tan((figure(tilt!) * Math.PI) / 180);
		const above = face === this.up;
		const fence = / at the fence, ([\d .,/]+?) to the blade/.exec(line);
		const cut = (sharp: [Spot, Spot], blunt: [Spot, Spot]): void => {
			const [up, down] = above ? [sharp, blunt] : [blunt, sharp];
			this.upper = kept(this.upper, ...up, side!);
			this.lower = kept(this.lower, ...down, side!);
		};
		if (fence) {
			const blunt = this.acrossAt(figure(fence[1]!), side!);
			cut(shifted(blunt, side!, slope), blunt);
			return;
		}
		const [p, q] = spotsIn(line.split(' through ')[1]!);
		const seen = ([x, y]: Spot): Spot => [above ? x : this.across - x, y];
		const sharp: [Spot, Spot] = [seen(p!), seen(q!)];
		cut(sharp, shifted(sharp, side!, -slope));
	}

	/** The line so far from the edge of the blank across from a side. */
	private acrossAt(from: number, side: string): [Spot, Spot] {
		const { across, high } = this;
		switch (side) {
			case 'left':
				return [
					[across - from, 0],
					[across - from, high],
				];
			case 'right':
				return [
					[from, 0],
					[from, high],
				];
			case 'bottom':
				return [
					[0, high - from],
					[across, high - from],
				];
			default:
				return [
					[0, from],
					[across, from],
				];
		}
	}
}

const OUT: Readonly<Record<string, Spot>> = {
	left: [-1, 0],
	right: [1, 0],
	bottom: [0, -1],
	top: [0, 1],
};

/** A line moved square to itself towards a side. */
function shifted([p, q]: [Spot, Spot], side: string, by: number): [Spot, Spot] {
	const long = Math.hypot(q[0] - p[0], q[1] - p[1]);
	const normal: Spot = [(q[1] - p[1]) / long, -(q[0] - p[0]) / long];
	const out = OUT[side]!;
	const sign = Math.sign(normal[0] * out[0] + normal[1] * out[1]);
	const move = ([x, y]: Spot): Spot => [x + sign * by * normal[0], y + sign * by * normal[1]];
	return [move(p), move(q)];
}

/** What is left of a ring when all that lies past a line towards a side is cut off. */
function kept(ring: Ring, p: Spot, q: Spot, side: string): Ring {
	const turn = ([x, y]: Spot): number => (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]);
	const [dx, dy] = OUT[side]!;
	const sign = -Math.sign((q[0] - p[0]) * dy - (q[1] - p[1]) * dx);
	return ring.flatMap((a, i) => {
		const b = ring[(i + 1) % ring.length]!;
		const [u, v] = [sign * turn(a), sign * turn(b)];
		const t = u / (u - v);
		const cut: Spot[] = u * v < 0 ? [[a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]] : [];
		return u >= 0 ? [a, ...cut] : cut;
	});
}

const box = (left: number, right: number, low: number, high: number): Ring => [
	[left, low],
	[right, low],
	[right, high],
	[left, high],
];

const NUMBER = '(−?\\d+/\\d+|−?\\d+(?:[.,]\\d+)?(?: \\d+/\\d+)?)';
const SPOT = new RegExp(
	`→ ${NUMBER} ↑ ${NUMBER}(?! to)(?: R ${NUMBER})?(?: curve R ${NUMBER}, ${NUMBER} (out|in))?`,
	'g',
);
const SPAN = new RegExp(`→ ${NUMBER} to ${NUMBER} ↑ ${NUMBER} to ${NUMBER}`);

function signed(text: string): number {
	return text.startsWith('−') ? -figure(text.slice(1)) : figure(text);
}

export function spotsIn(text: string): Spot[] {
	return [...text.matchAll(SPOT)].map((m) => [signed(m[1]!), signed(m[2]!)]);
}

/** A rectangle, or corner by corner; roundings as polygons. */
function outlineOf(line: string, whole: Ring): Ring {
	const all = /^Round the corners: (.+)$/.exec(line);
	const span = SPAN.exec(line);
	if (all || span) {
		const ring = span
			? box(...(span.slice(1).map(signed) as [number, number, number, number]))
			: whole;
		const radii = radiiIn(line);
		return ring.flatMap((at, i) => rounded(ring, i, radii[i % radii.length] ?? 0, at));
	}
	const corners = [...line.matchAll(SPOT)];
	const ring = corners.map((m): Spot => [signed(m[1]!), signed(m[2]!)]);
	return corners.flatMap((m, i) => {
		const round = rounded(ring, i, m[3] === undefined ? 0 : figure(m[3]), ring[i]!);
		if (m[5] === undefined) return round;
		const rise = figure(m[5]) * (m[6] === 'out' ? 1 : -1);
		return [...round, ...curve(ring[i]!, ring[(i + 1) % ring.length]!, rise)];
	});
}

function radiiIn(line: string): number[] {
	const [, list] =
		/(?:corners|Round the corners:) R ([\d .,/]+?)(?: from the lower left.*)?$/.exec(line) ?? [];
	return list === undefined ? [] : list.split(', ').map(figure);
}

/** A corner with a rounding of that radius, in short chords. */
function rounded(ring: Ring, i: number, radius: number, at: Spot): Spot[] {
	if (radius === 0) return [at];
	const [a, b] = [ring.at(i - 1)!, ring[(i + 1) % ring.length]!];
	const unit = (p: Spot): Spot => {
		const [x, y] = [p[0] - at[0], p[1] - at[1]];
		const long = Math.hypot(x, y);
		return [x / long, y / long];
	};
	const [u, v] = [unit(a), unit(b)];
	const half = Math.acos(u[0] * v[0] + u[1] * v[1]) / 2;
	const [off, mid] = [radius / Math.tan(half), radius / Math.sin(half)];
	const way = Math.hypot(u[0] + v[0], u[1] + v[1]);
	const centre: Spot = [at[0] + ((u[0] + v[0]) / way) * mid, at[1] + ((u[1] + v[1]) / way) * mid];
	const [s, e]: [Spot, Spot] = [
		[at[0] + u[0] * off, at[1] + u[1] * off],
		[at[0] + v[0] * off, at[1] + v[1] * off],
	];
	return sweep(centre, s, e);
}

/** An arc from one spot to another that stands so far off the line between them; not the ends. */
function curve(p: Spot, q: Spot, rise: number): Spot[] {
	const chord = Math.hypot(q[0] - p[0], q[1] - p[1]);
	// The outline runs counter-clockwise: outward lies to the right.
	const out: Spot = [(q[1] - p[1]) / chord, -(q[0] - p[0]) / chord];
	const steps = 24;
	const radius = (chord ** 2 / 4 + rise ** 2) / (2 * Math.abs(rise));
	const middle: Spot = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
	const back = Math.sign(rise) * (Math.abs(rise) - radius);
	const centre: Spot = [middle[0] + out[0] * back, middle[1] + out[1] * back];
	const top: Spot = [middle[0] + out[0] * rise, middle[1] + out[1] * rise];
	return [...sweep(centre, p, top, steps), ...sweep(centre, top, q, steps)].slice(1, -1);
}

/** The shorter way round a centre. */
function sweep(centre: Spot, from: Spot, to: Spot, steps = 24): Spot[] {
	const angle = (p: Spot): number => Math.atan2(p[1] - centre[1], p[0] - centre[0]);
	const start = angle(from);
	let turn = angle(to) - start;
	if (turn > Math.PI) turn -= 2 * Math.PI;
	if (turn < -Math.PI) turn += 2 * Math.PI;
	const radius = Math.hypot(from[0] - centre[0], from[1] - centre[1]);
	return [...Array(steps + 1).keys()].map((k): Spot => {
		const a = start + (turn * k) / steps;
		return [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)];
	});
}

function madeOf(line: string): Made {
	const named = /^(Holes?|Cut out|Rout|Rabbet|Mark) (\d+)(?: to \d+)?(?: ([^→]*?))?: /.exec(
		`${line} `,
	);
	if (!named) throw new Error(`no such work: '${line}'`);
	const deep = /([\d .,/]+) deep/.exec(line);
	const size = /Ø ([\d .,/]+?)(?=, | →|$| \d+ →)/.exec(line);
	const span = SPAN.exec(line);
	return {
		verb: named[1]!.replace('Holes', 'Hole'),
		name: named[3] ?? '',
		depth: deep ? figure(deep[1]!) : null,
		diameter: size ? figure(size[1]!) : null,
		places: span
			? box(...(span.slice(1).map(signed) as [number, number, number, number]))
			: spotsIn(line),
		ring: size && !span ? [] : outlineOf(line, []),
		smooth: line.includes('a smooth curve'),
	};
}

export function areaOf(ring: Ring): number {
	const twice = ring.reduce((sum, p, i) => {
		const q = ring[(i + 1) % ring.length]!;
		return sum + p[0] * q[1] - q[0] * p[1];
	}, 0);
	return Math.abs(twice) / 2;
}

/** From a spot to the nearest of a ring's sides. */
export function offRing([x, y]: Spot, ring: Ring): number {
	return Math.min(
		...ring.map((a, i) => {
			const b = ring[(i + 1) % ring.length]!;
			const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
			const long = dx * dx + dy * dy;
			const t =
				long === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / long));
			return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
		}),
	);
}
