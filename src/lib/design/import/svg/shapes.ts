/** What this file reads of an element. */
interface Element {
	readonly name: string;
	readonly attributes: Readonly<Record<string, string>>;
}

/** The path data of a basic shape (or of a path itself), as the format defines it. */
export function pathOf(e: Element): string {
	const n = (name: string): number => Number.parseFloat(e.attributes[name] ?? '0') || 0;
	switch (e.name.toLowerCase()) {
		case 'path':
			return e.attributes['d'] ?? '';
		case 'rect':
			return rectPath(n('x'), n('y'), n('width'), n('height'), radii(e));
		case 'circle':
			return ellipsePath(n('cx'), n('cy'), n('r'), n('r'));
		case 'ellipse':
			return ellipsePath(n('cx'), n('cy'), n('rx'), n('ry'));
		case 'line':
			return `M${n('x1')} ${n('y1')}L${n('x2')} ${n('y2')}`;
		case 'polyline':
			return pointsPath(e, '');
		case 'polygon':
			return pointsPath(e, 'Z');
		default:
			return '';
	}
}

function radii(e: Element): readonly [number, number] {
	const rx = Number.parseFloat(e.attributes['rx'] ?? e.attributes['ry'] ?? '0') || 0;
	const ry = Number.parseFloat(e.attributes['ry'] ?? e.attributes['rx'] ?? '0') || 0;
	return [Math.max(0, rx), Math.max(0, ry)];
}

function rectPath(
	x: number,
	y: number,
	w: number,
	h: number,
	r: readonly [number, number],
): string {
	if (w <= 0 || h <= 0) return '';
	const rx = Math.min(r[0], w / 2);
	const ry = Math.min(r[1], h / 2);
	if (rx === 0 || ry === 0) return `M${x} ${y}H${x + w}V${y + h}H${x}Z`;
	const arc = (ex: number, ey: number): string => `A${rx} ${ry} 0 0 1 ${ex} ${ey}`;
	return (
		`M${x + rx} ${y}H${x + w - rx}${arc(x + w, y + ry)}V${y + h - ry}${arc(x + w - rx, y + h)}` +
		`H${x + rx}${arc(x, y + h - ry)}V${y + ry}${arc(x + rx, y)}Z`
	);
}

function ellipsePath(cx: number, cy: number, rx: number, ry: number): string {
	if (rx <= 0 || ry <= 0) return '';
	return `M${cx - rx} ${cy}A${rx} ${ry} 0 0 1 ${cx + rx} ${cy}A${rx} ${ry} 0 0 1 ${cx - rx} ${cy}Z`;
}

function pointsPath(e: Element, end: string): string {
	const numbers =
		(e.attributes['points'] ?? '').match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? [];
	const pairs: string[] = [];
	for (let i = 0; i + 1 < numbers.length; i += 2) pairs.push(`${numbers[i]} ${numbers[i + 1]}`);
	return pairs.length > 1 ? `M${pairs.join('L')}${end}` : '';
}
