import { TICKS_PER_MM } from '../../../measure';
import type { Path } from '../../../job';
import { commonArea, area, type Outline } from '../../../geometry';
import { complain, type Bench } from '../bench';
import { placeShape } from '../fit';
import type { CoverFigure, WindowFigure, ZoneFigure } from '../figures';

/** The zones as they lie; null for one whose outline cannot be drawn. */
export function zoneFigures(bench: Bench): (ZoneFigure | null)[] {
	return bench.panel.zones.map((z, i) => {
		const drawn = placeShape(z.outline, bench.job.shop.ruler);
		complain(bench, ['zones', i, 'outline'], drawn.complaints);
		return drawn.outline && { id: z.id, name: z.name, kind: z.kind, outline: drawn.outline };
	});
}

/** A square millimetre: less than this in common is a shared line, not an overlap. */
const NOTHING = TICKS_PER_MM ** 2;

/**
 * A battery and a spare wheel have to stay within reach: under a cover or a window. A seat belt has
 * to run freely and an airbag to open: the panel keeps off them. Common practice, no source; the
 * vehicle maker's papers rule. False where the panel must not be made.
 */
export function checkZones(
	bench: Bench,
	board: Outline,
	zones: readonly ZoneFigure[],
	covers: readonly CoverFigure[],
	windows: readonly WindowFigure[],
): boolean {
	const allowed = zones.map((zone) => {
		const path = ['zones', bench.panel.zones.findIndex((z) => z.id === zone.id), 'outline'];
		const over = commonArea([board], [zone.outline]);
		if (over < NOTHING) return true;
		if (zone.kind === 'airbag' || zone.kind === 'belt')
			return keptOff(bench, zone, path, windows, over) || zone.kind === 'belt';
		if (zone.kind !== 'other') keepInReach(bench, zone, path, covers, windows);
		return true;
	});
	return !allowed.includes(false);
}

function keptOff(
	bench: Bench,
	zone: ZoneFigure,
	path: Path,
	windows: readonly WindowFigure[],
	over: number,
): boolean {
	const open = commonArea(
		windows.map((w) => w.hole),
		[zone.outline],
	);
	if (over - open < NOTHING) return true;
	bench.log[zone.kind === 'airbag' ? 'stop' : 'check'](
		path,
		zone.kind === 'airbag'
			? `The panel covers ${zone.name}, where an airbag opens.`
			: `The panel covers ${zone.name}, where a seat belt runs.`,
		zone.kind === 'airbag'
			? 'Keep panel, cloth and fixings out of it, and leave work on airbags to a licensed workshop.'
			: 'Keep it free with a window, and check that the belt runs and locks after fitting.',
	);
	return false;
}

function keepInReach(
	bench: Bench,
	zone: ZoneFigure,
	path: Path,
	covers: readonly CoverFigure[],
	windows: readonly WindowFigure[],
): void {
	const ways = [...covers.map((c) => c.ledge.inner), ...windows.map((w) => w.finished)];
	const open = Math.max(0, ...ways.map((w) => commonArea([w], [zone.outline])));
	if (open >= area(zone.outline) * 0.6) return;
	bench.log.check(
		path,
		open < NOTHING
			? `${zone.name} lies behind the panel with no cover or window over it.`
			: `Only part of ${zone.name} lies behind a cover or window.`,
		'Give it a service cover large enough to reach and take it out, or make sure the whole panel comes off without tools.',
	);
}
