import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { bounds, moved, area } from '../../lib/geometry';
import { mm, ticks } from '../../lib/measure';
import { auditRoll, nestRoll, type RollPiece, type RollProblem } from '../../lib/nest';
import type { Note } from './families';
import { now, type Allowance } from './measure';

interface OutlineFile {
	readonly family: string;
	readonly instances: readonly {
		readonly name: string;
		readonly width: number;
		readonly bestDensity: number | null;
		readonly items: readonly {
			readonly points: readonly (readonly [number, number])[];
			readonly n: number;
			readonly rotations: RollPiece['turns'];
		}[];
	}[];
}

type OutlineInstance = OutlineFile['instances'][number];

/** One strip of outlines: density in per cent of the length used. */
export interface OutlineRow {
	readonly family: string;
	readonly name: string;
	readonly pieces: number;
	readonly first: number;
	readonly ours: number;
	readonly published: number | null;
	readonly seconds: number;
}

/**
 * The published strips of outlines, of one family alone where that is asked for; none without the
 * folder of shared benchmarks.
 */
export function outlineTable(
	root: string,
	allowance: Allowance,
	note: Note,
	only?: string,
): OutlineRow[] {
	const folder = join(root, '..', 'shared', 'benchmarks');
	if (!existsSync(folder)) return [];
	const names = readdirSync(folder).filter(
		(name) => /^irregular-.*\.json$/.test(name) && name === `${only ?? name.slice(0, -5)}.json`,
	);
	return names.sort().flatMap((name) => {
		const file = JSON.parse(readFileSync(join(folder, name), 'utf8')) as OutlineFile;
		return file.instances.map((instance) => {
			note(`${file.family}, ${instance.name}`);
			return rowOf(file.family, instance, allowance);
		});
	});
}

/** One unit of the source as a millimetre. */
function problemOf(instance: OutlineInstance): RollProblem {
	const pieces = instance.items.map((item, i): RollPiece => {
		const points = item.points.map(([x, y]) => ({ x: mm(x), y: mm(y) }));
		const box = bounds(points);
		const outline = moved(points, -box.x, -box.y);
		const [length, width] = [ticks(box.length), ticks(box.width)];
		return { id: `${i}`, length, width, count: item.n, turns: item.rotations, outline };
	});
	const none = ticks(0);
	const width = mm(instance.width);
	return { width, gap: none, limit: null, repeat: none, by: 'outline', pieces };
}

function rowOf(family: string, instance: OutlineInstance, allowance: Allowance): OutlineRow {
	const problem = problemOf(instance);
	const start = now();
	const search = nestRoll(problem, allowance);
	let step = search.next();
	const first = step.done === true ? step.value : step.value.best;
	let answer = first;
	while (step.done !== true && now() - start < allowance.seconds * 1000) {
		step = search.next();
		answer = step.done === true ? step.value : step.value.best;
	}
	const seconds = (now() - start) / 1000;
	const [fault] = auditRoll(problem, answer);
	if (fault !== undefined) throw new Error(`bug: ${instance.name}: ${fault.what}`);
	const whole = problem.pieces.reduce(
		(sum, p) => sum + p.count * Math.abs(area(p.outline ?? [])),
		0,
	);
	const density = (length: number): number => (100 * whole) / (problem.width * length);
	return {
		family,
		name: instance.name,
		pieces: answer.placed.length,
		first: density(first.length),
		ours: density(answer.length),
		published: instance.bestDensity ?? null,
		seconds,
	};
}

export function outlineText(rows: readonly OutlineRow[]): string {
	const head = '| family | strip | pieces | first % | ours % | published % | share | s |';
	const rule = '|---|---|---:|---:|---:|---:|---:|---:|';
	const lines = rows.map((r) => {
		const published = r.published === null ? '' : r.published.toFixed(2);
		const share = r.published === null ? '' : (r.ours / r.published).toFixed(3);
		return `| ${r.family} | ${r.name} | ${r.pieces} | ${r.first.toFixed(2)} | ${r.ours.toFixed(2)} | ${published} | ${share} | ${r.seconds.toFixed(2)} |`;
	});
	return `Outlines on a strip: area of the pieces to the strip used\n\n${[head, rule, ...lines].join('\n')}\n`;
}
