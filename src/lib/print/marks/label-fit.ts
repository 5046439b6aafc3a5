import {
	type TextMark,
	type Spot,
	boxInRing,
	boxOffRing,
	round,
	type Bounds,
	CAP,
	DESCENT,
	shortened,
	textWidth,
} from '../drawing';

/** A name in bold and the lines under it. */
export interface Label {
	readonly name: string;
	readonly lines: readonly string[];
}

interface FittedLabel {
	readonly marks: readonly TextMark[];
	readonly boxes: readonly Bounds[];
}

const NAME = 3.2;
const LINE = 2.7;
const LEADING = 1.25;
const INSET = 1.5;

/**
 * The richest of some labels that finds room inside an outline on paper (first ring) and clear of
 * its holes (the rest): upright before turned, large before small. Nothing at all when not even the
 * last one fits; the table beside the drawing names every part anyway.
 */
export function fitLabel(
	labels: readonly Label[],
	rings: readonly (readonly Spot[])[],
): FittedLabel {
	const space = round(rings[0] ?? []);
	// Where the wood itself has no room, the words may stand in one of its holes.
	for (const inHoles of [false, true])
		for (const label of labels)
			for (const scale of [1, 0.85, 0.7])
				for (const turned of [false, true]) {
					const size = blockSize(label, scale);
					const box = turned ? { width: size.height, height: size.width } : size;
					if (box.width > space.width || box.height > space.height) continue;
					const slot = slotFor(box, space, rings, inHoles);
					if (slot !== null) return setLabel(label, scale, turned, { ...slot, ...box });
				}
	return { marks: [], boxes: [] };
}

/** A name too long for its part, cut short but never to less than the mark itself. */
export function shortName(label: string, name: string, width: number): string {
	const short = shortened(`${label} ${name}`, width, NAME, 'semibold');
	return short.length > label.length + 4 ? short : label;
}

function blockSize(label: Label, scale: number): { width: number; height: number } {
	const widths = label.lines.map((l) => textWidth(l, LINE * scale));
	const rest = label.lines.length * LINE * LEADING;
	return {
		width: Math.max(textWidth(label.name, NAME * scale, 'semibold'), ...widths) + 2 * INSET * scale,
		height: (NAME * (CAP + DESCENT) + rest) * scale + 2 * INSET * scale * 0.6,
	};
}

/**
 * The first place where the block fits: the upper left corner as on a plan, the middle, then a
 * grid.
 */
function slotFor(
	box: { width: number; height: number },
	space: Bounds,
	rings: readonly (readonly Spot[])[],
	inHoles: boolean,
): Spot | null {
	const dx = space.width - box.width;
	const dy = space.height - box.height;
	const shares = [0, 0.5, 0.25, 0.75, 1, 0.125, 0.375, 0.625, 0.875];
	const slots = [
		{ x: 0, y: 0 },
		{ x: 0.5, y: 0.5 },
		...shares.flatMap((y) => shares.map((x) => ({ x, y }))),
	];
	const [outline, ...holes] = rings;
	for (const slot of slots) {
		const at = { x: space.x + slot.x * dx, y: space.y + slot.y * dy };
		const inner = shrunk({ ...at, ...box }, 0.05);
		if (!boxInRing(inner, outline ?? [])) continue;
		const clear = (hole: readonly Spot[]) =>
			boxOffRing(inner, hole) || (inHoles && boxInRing(inner, hole));
		if (holes.every(clear)) return at;
	}
	return null;
}

function shrunk(box: Bounds, by: number): Bounds {
	return {
		x: box.x + by,
		y: box.y + by,
		width: box.width - 2 * by,
		height: box.height - 2 * by,
	};
}

function setLabel(label: Label, scale: number, turned: boolean, box: Bounds): FittedLabel {
	const inset = INSET * scale;
	const texts = [label.name, ...label.lines];
	let down = inset * 0.6 + NAME * scale * CAP;
	const marks = texts.map((text, i): TextMark => {
		if (i > 0) down += LINE * LEADING * scale;
		const spot = turned
			? { x: box.x + down, y: box.y + box.height - inset, turn: 90 }
			: { x: box.x + inset, y: box.y + down };
		const size = (i === 0 ? NAME : LINE) * scale;
		return { kind: 'text', ...spot, text, size, ...(i === 0 ? { weight: 'semibold' } : {}) };
	});
	return { marks, boxes: [box] };
}
