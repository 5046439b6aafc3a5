import type { EdgeRun } from '../../../geometry';
import { after, apply, type Affine } from '../affine';
import { MOST_EDGES } from '../drawing-file';
import { LeftOut } from './left-out';
import { runsOfPath } from './path';
import { propsOf, type Props } from './property';
import { pathOf } from './shapes';
import { transformOf } from './transform';
import { innerViewport, type Viewport } from './viewport';
import { lineAt, type XmlElement } from './xml';

/** Groups in groups: deeper than this is no drawing of a panel. */
const DEEPEST = 60;

/** Elements that hold others and draw nothing themselves. */
const GROUPS = new Set(['svg', 'g', 'a', 'switch']);
const SHAPES = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon']);
/** Described, named or coloured with only: nothing seen is lost. */
const SILENT = new Set(
	'title desc metadata style lineargradient radialgradient stop filter'.split(' '),
);
/** Never run, never fetched. */
const ACTIVE = new Set(
	'script foreignobject image use iframe animate set animatetransform'.split(' '),
);

/** Where a thing of the drawing stands. */
export interface Standing {
	readonly to: Affine;
	readonly inside: Viewport['inside'];
	/** The nearest inner svg's own frame in the drawing, which cuts off what reaches beyond it. */
	readonly frame: Frame | null;
	readonly visible: boolean;
	readonly depth: number;
}

interface Frame {
	readonly to: Affine;
	readonly width: number;
	readonly height: number;
}

/** All outlines of a drawing that can be seen, as they lie once every group has moved them. */
export class SvgWalk {
	readonly runs: EdgeRun[] = [];
	readonly leftOut = new LeftOut();
	/** Things in it that cannot be seen, and are no part of the drawing. */
	hidden = 0;
	private edges = 0;

	constructor(
		private readonly text: string,
		private readonly fine: number,
	) {}

	/** Goes through what an element holds, the element itself being placed already. */
	through(e: XmlElement, place: Standing): void {
		const children = e.name === 'switch' ? e.children.filter(isPlain).slice(0, 1) : e.children;
		if (place.depth >= DEEPEST) {
			if (children.length > 0) this.leftOut.note('deep');
			return;
		}
		for (const child of children) this.into(child, { ...place, depth: place.depth + 1 });
	}

	/** What is said of an element apart from what it draws: scripts, addresses, clipping. */
	noteSigns(e: XmlElement, props: Props): void {
		const names = [...e.attributes.keys()].map((a) => a.toLowerCase());
		if (names.some((a) => a.startsWith('on'))) this.leftOut.thing('script');
		const links = ['href', 'xlink:href'].map((a) => e.attributes.get(a) ?? '');
		if (ACTIVE.has(e.name) && links.some((l) => l !== '' && !l.startsWith('#')))
			this.leftOut.note('outside');
		const cut = ['clip-path', 'mask'].some((a) => !['', 'none'].includes(props.of(a) ?? ''));
		if (cut) this.leftOut.note('clipped');
		if (e.name === 'style' && MOVES.test(e.texts.join(' '))) this.leftOut.note('style sheet');
	}

	fault(e: XmlElement, what: string, fix: string): void {
		const line = lineAt(this.text, e.at);
		this.leftOut.fault(`In line ${line} of the SVG, at <${e.name}>, ${what}.`, fix);
	}

	private into(e: XmlElement, place: Standing): void {
		const props = propsOf(e);
		if (props.of('display') === 'none') {
			this.hidden++;
			return;
		}
		this.noteSigns(e, props);
		if (this.edges > MOST_EDGES) return;
		const drawn = SHAPES.has(e.name);
		if (!drawn && !GROUPS.has(e.name)) return this.other(e);
		const moved = transformOf(props);
		if ('seen' in moved) {
			const seen = `the transform "${moved.seen.slice(0, 60)}" cannot be read`;
			return this.fault(e, seen, moved.fix);
		}
		const here = { ...place, to: after(moved, place.to), visible: isVisible(props, place.visible) };
		if (drawn) this.draw(e, props, here);
		else if (e.name === 'svg') this.inner(e, props, here);
		else this.through(e, here);
	}

	private other(e: XmlElement): void {
		// A drawing program's own notes are under a prefix of their own.
		if (SILENT.has(e.name) || e.name.includes(':')) return;
		if (e.name === 'defs' && e.children.every((c) => SILENT.has(c.name))) return;
		this.leftOut.thing(e.name);
	}

	private inner(e: XmlElement, props: Props, place: Standing): void {
		const view = innerViewport(props, place.inside);
		if (view === null) return;
		if ('what' in view) return this.fault(e, view.what, view.fix);
		const to = after(view.to, place.to);
		const cuts = view.inside && !['visible', 'auto'].includes(props.of('overflow') ?? '');
		const frame = cuts && view.inside ? frameOf(to, props, view.inside) : place.frame;
		this.through(e, { ...place, to, inside: view.inside, frame });
	}

	private draw(e: XmlElement, props: Props, place: Standing): void {
		if (!place.visible) {
			this.hidden++;
			return;
		}
		const data = pathOf(e.name, props, place.inside);
		if (typeof data !== 'string') {
			const seen = `${data.bad} is "${data.seen.slice(0, 60)}", which cannot be read`;
			return this.fault(e, seen, 'Save it with plain numbers, or turn it into a path.');
		}
		const { runs, fault, whole } = runsOfPath(data, this.fine, place.to);
		if (fault) this.leftOut.note('faulty path');
		if (!whole) this.edges = MOST_EDGES + 1;
		for (const run of runs) {
			this.runs.push(run);
			this.edges += run.corners.length;
			if (place.frame && reachesBeyond(run, place.frame)) this.leftOut.note('cut off');
		}
		if (this.edges > MOST_EDGES) this.leftOut.note('too much');
	}
}

export const OUTERMOST: Omit<Standing, 'to' | 'inside'> = { frame: null, visible: true, depth: 0 };

/** What a style sheet may say that makes an outline another one, or none. */
const MOVES =
	/(?<![-\w])(?:display|visibility|transform|translate|rotate|scale|width|height|clip-path|mask)\s*:|[{;\s](?:d|r|x|y|rx|ry|cx|cy)\s*:/i;

/** Of a choice of things the first that asks for nothing special is drawn. */
const isPlain = (e: XmlElement): boolean =>
	!['requiredExtensions', 'systemLanguage'].some((a) => e.attributes.has(a)) && !SILENT.has(e.name);

function isVisible(props: Props, outer: boolean): boolean {
	const own = props.of('visibility');
	return own === 'visible' ? true : own === 'hidden' || own === 'collapse' ? false : outer;
}

/** The frame in the coordinates of what is in it: with a view box that is not all of the frame. */
function frameOf(to: Affine, props: Props, inside: { width: number; height: number }): Frame {
	const [x = 0, y = 0] = (props.of('viewBox') ?? '').split(/[\s,]+/).map(Number);
	const at = apply(to, { x, y });
	return { to: { ...to, e: at.x, f: at.y }, ...inside };
}

/** Corners beyond the frame by more than a hundredth of it: rounding is no cut. */
function reachesBeyond(run: EdgeRun, { to, width, height }: Frame): boolean {
	const det = to.a * to.d - to.b * to.c;
	return run.corners.some((c) => {
		const [dx, dy] = [c.x - to.e, -c.y - to.f];
		const x = (to.d * dx - to.c * dy) / det / width;
		const y = (to.a * dy - to.b * dx) / det / height;
		return Math.min(x, y) < -0.01 || Math.max(x, y) > 1.01;
	});
}
