import { nth } from '../../../measure';
import { parseSync, type INode } from 'svgson';
import type { EdgeRun } from '../../../geometry';
import type { Complaint } from '../../shape';
import { check, FINE_MM, MOST_EDGES, nothingRead, type DrawingFile } from '../drawing-file';
import { runsOfPath } from './path';
import { pathOf } from './shapes';

/*
 * The one file the SVG reader enters through. Text is only ever looked at: nothing of it is put
 * into a page, run or fetched.
 */

/** Longest SVG read: three megabytes. */
const LONGEST = 3_000_000;
const DEEPEST = 60;

/** A whole SVG, or path data alone. `unitMm`: the unit the person states. */
export function readSvg(text: string, unitMm: number): DrawingFile {
	if (text.length > LONGEST)
		return nothingRead(
			'The SVG is larger than 3 MB: too much for the outline of a panel.',
			'Save the outline alone.',
		);
	if (!text.includes('<')) return pathAlone(text, unitMm);
	const root = parsed(text);
	if (!root)
		return nothingRead(
			'This is no SVG that can be read.',
			'Save the outline as a plain SVG, or paste its path data.',
		);
	const walk = new Walk(FINE_MM / unitMm);
	walk.into(root, '', 0);
	return { runs: walk.runs, says: saysOf(root), complaints: walk.told() };
}

function pathAlone(text: string, unitMm: number): DrawingFile {
	const { runs, fault } = runsOfPath(text, '', FINE_MM / unitMm);
	const complaints = fault ? [faultyPath()] : [];
	return { runs, says: null, complaints };
}

const faultyPath = (): Complaint =>
	check(
		'A path in the drawing breaks off: its data cannot be read to the end.',
		'Save the drawing again, or give the outline another way.',
	);

function parsed(text: string): INode | null {
	// Comments and document types hold nothing to draw and trip the reader.
	const bare = text
		.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<!DOCTYPE[^>[]*(\[[^\]]*\])?[^>]*>/gi, '')
		.replace(/<\?[\s\S]*?\?>/g, '');
	try {
		const node: unknown = parseSync(bare.trim());
		return (Array.isArray(node) ? (node[0] as INode) : (node as INode)) ?? null;
	} catch {
		return null; // the reader throws on what is no SVG; the caller says so in words
	}
}

/** Elements that hold others and draw nothing themselves. */
const GROUPS = new Set(['svg', 'g', 'a', 'switch']);
const SHAPES = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon']);
/** Described or named only: nothing seen is lost. */
const SILENT = new Set([
	'title',
	'desc',
	'metadata',
	'defs',
	'style',
	'text',
	'sodipodi:namedview',
	'',
]);
/** Never run, never fetched. */
const ACTIVE = new Set([
	'script',
	'foreignobject',
	'image',
	'use',
	'iframe',
	'animate',
	'set',
	'animatetransform',
]);

class Walk {
	readonly runs: EdgeRun[] = [];
	private edges = 0;
	private faulty = false;
	private readonly left = new Map<string, number>();
	private outside = false;

	constructor(private readonly fine: number) {}

	into(node: INode, transform: string, depth: number): void {
		const name = node.name.toLowerCase();
		const own = `${transform} ${node.attributes['transform'] ?? ''}`.trim();
		this.noteActive(node, name);
		if (node.attributes['display'] === 'none' || this.edges > MOST_EDGES) return;
		if (GROUPS.has(name) && depth < DEEPEST)
			for (const child of node.children)
				if (child.type === 'element') this.into(child, own, depth + 1);
		if (SHAPES.has(name)) this.draw(node, own);
		else if (!GROUPS.has(name) && !SILENT.has(name) && node.type === 'element')
			this.left.set(name, (this.left.get(name) ?? 0) + 1);
	}

	private draw(node: INode, transform: string): void {
		const { runs, fault } = runsOfPath(pathOf(node), transform, this.fine);
		this.faulty ||= fault !== null;
		for (const run of runs) {
			this.runs.push(run);
			this.edges += run.corners.length;
		}
	}

	private noteActive(node: INode, name: string): void {
		const handlers = Object.keys(node.attributes).some((a) => a.toLowerCase().startsWith('on'));
		if (handlers) this.left.set('script', (this.left.get('script') ?? 0) + 1);
		const links = ['href', 'xlink:href'].map((a) => node.attributes[a] ?? '');
		if (ACTIVE.has(name) && links.some((l) => l !== '' && !l.startsWith('#'))) this.outside = true;
	}

	told(): Complaint[] {
		const names = [...this.left.keys()].slice(0, 6).join(', ');
		return [
			...(this.faulty ? [faultyPath()] : []),
			...(this.edges > MOST_EDGES
				? [
						check(
							`The drawing has more than ${MOST_EDGES} edges; only the first are looked at.`,
							'Save the outline alone.',
						),
					]
				: []),
			...(this.left.size > 0
				? [
						check(
							`Things in the SVG that are no outlines were left out and not run: ${names}.`,
							'Turn copies (use) and pictures into paths before saving, if the outline is one of them.',
						),
					]
				: []),
			...(this.outside
				? [
						check(
							'The SVG points to something outside itself; nothing was fetched.',
							'Save it with everything in it.',
						),
					]
				: []),
		];
	}
}

const UNIT_MM: Readonly<Record<string, number>> = {
	mm: 1,
	cm: 10,
	in: 25.4,
	pt: 25.4 / 72,
	pc: 25.4 / 6,
	px: 25.4 / 96,
};

/** A width with a unit over a view box tells how large one unit of the drawing is. */
function saysOf(root: INode): DrawingFile['says'] {
	const width = /^\s*([\d.]+)\s*(mm|cm|in|pt|pc|px)\s*$/.exec(root.attributes['width'] ?? '');
	const box = (root.attributes['viewBox'] ?? '')
		.trim()
		.split(/[\s,]+/)
		.map(Number);
	const across = box.length === 4 ? nth(box, 2) : NaN;
	const size = width ? Number(width[1]) * (UNIT_MM[width[2] ?? ''] ?? NaN) : NaN;
	const mm = size / across;
	return Number.isFinite(mm) && mm > 0 ? { mm, name: `${Math.round(mm * 1e4) / 1e4} mm` } : null;
}
