import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { nth, ticks, snap } from '../../lib/measure';
import { random, type RollProblem } from '../../lib/nest';

/** One strip to fill: rectangles as `across` x `along`, and the shortest length known. */
export interface StripInstance {
	readonly family: string;
	readonly name: string;
	readonly width: number;
	readonly items: readonly {
		readonly across: number;
		readonly along: number;
		readonly n: number;
	}[];
	readonly bestFixed: number;
	readonly bestTurned: number;
}

interface PublishedFile {
	readonly family: string;
	readonly instances: readonly {
		readonly name: string;
		readonly width: number;
		readonly items: readonly { readonly w: number; readonly h: number; readonly n: number }[];
		readonly lowerBound: number;
		readonly lowerBoundRotated: number;
		readonly bestKnown: number | null;
		readonly bestKnownRotated: number | null;
	}[];
}

/**
 * The published strips of a folder; none when there is no such folder. Where no best length is
 * known, the bound stands for it.
 */
export function publishedStrips(folder: string): StripInstance[] {
	if (!existsSync(folder)) return [];
	const files = readdirSync(folder).filter((name) => /^strip-.*\.json$/.test(name));
	return files.sort().flatMap((name) => {
		const file = JSON.parse(readFileSync(join(folder, name), 'utf8')) as PublishedFile;
		return file.instances.map((i) => ({
			family: file.family,
			name: i.name,
			width: i.width,
			items: i.items.map(({ w, h, n }) => ({ across: w, along: h, n })),
			bestFixed: i.bestKnown ?? i.lowerBound,
			bestTurned: i.bestKnownRotated ?? i.lowerBoundRotated,
		}));
	});
}

/**
 * Sizes of the made strips: width, length, pieces; those of the classes of Hopper and Turton
 * (2001).
 */
const MADE_SIZES = [
	[20, 20, 16],
	[40, 15, 25],
	[60, 30, 28],
	[60, 60, 49],
	[60, 90, 73],
	[80, 120, 97],
] as const;

/**
 * Rectangles cut without waste from one, by edge to edge cuts: the shortest length is known by
 * construction.
 */
export function madeStrips(each: number, seed: number): StripInstance[] {
	const stream = random(seed);
	return MADE_SIZES.flatMap(([width, length, pieces], c) =>
		Array.from({ length: each }, (_, i): StripInstance => {
			const items = dissected(width, length, pieces, (n) => stream.int(n));
			const best = { bestFixed: length, bestTurned: length };
			return { family: 'made without waste', name: `M${c + 1}_${i + 1}`, width, items, ...best };
		}),
	);
}

function dissected(
	width: number,
	length: number,
	pieces: number,
	int: (n: number) => number,
): StripInstance['items'] {
	const parts = [{ across: width, along: length, n: 1 }];
	for (let tries = 0; parts.length < pieces && tries < 100 * pieces; tries++) {
		// The largest of two drawn by lot, so that sizes neither even out nor run away.
		const [a, b] = [int(parts.length), int(parts.length)];
		const area = (i: number): number => nth(parts, i).across * nth(parts, i).along;
		const pick = area(a) >= area(b) ? a : b;
		const part = nth(parts, pick);
		const side = int(2) === 0 ? 'across' : 'along';
		if (part[side] < 2) continue;
		const at = 1 + int(part[side] - 1);
		parts[pick] = { ...part, [side]: at };
		parts.push({ ...part, [side]: part[side] - at });
	}
	return parts;
}

/** Sizes with decimals are published to five of them. */
export function scaleOf(instance: StripInstance): number {
	const whole = instance.items.every(
		(i) => Number.isInteger(i.across) && Number.isInteger(i.along),
	);
	return whole ? 1 : 100_000;
}

export function stripProblem(instance: StripInstance, turned: boolean): RollProblem {
	const scale = scaleOf(instance);
	const size = (n: number) => snap(n * scale);
	return {
		width: size(instance.width),
		gap: ticks(0),
		limit: null,
		repeat: ticks(0),
		by: 'rectangle',
		pieces: instance.items.map((item, i) => ({
			id: `${i}`,
			length: size(item.along),
			width: size(item.across),
			count: item.n,
			turns: turned ? [0, 90] : [0],
		})),
	};
}
