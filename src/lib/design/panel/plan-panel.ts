import type { Path, Job, Panel } from '../../job';
import { ticks } from '../../measure';
import { panelAssembly, needsOf, leftHand, rightCovering, rightPart } from './report';
import { benchFor, boardAsked, clothAsked, complain, type Bench } from './bench';
import {
	coverFigures,
	checkDevices,
	deviceFigures,
	drillsOf,
	fixingFigure,
	checkGroove,
	grooveFigure,
	grooveSize,
	type GrooveObstacle,
	hingeFigures,
	hingeLeaves,
	seamLines,
} from './fittings';
import { drawShape, fitPanel, windowFigures } from './fit';
import type { Fit, GrooveFigure, PanelDetail } from './figures';
import {
	layerFigures,
	panelParts,
	ringFigures,
	coveringsOf,
	checkLies,
	checkRims,
	checkTurnUnder,
	checkZones,
	zoneFigures,
} from './layers';
import type { PanelPlan } from './panel-plan';
import { checkMarks, withOwnMarks } from './same-marks';

type Figures = Omit<PanelDetail, 'assembly'>;

/**
 * One panel from its opening to its boards and the surfaces cloth has to cover. `path` is where the
 * panel stands in the job file. What cannot be made is left out and said; what can be, is planned.
 */
export function planPanel(panel: Panel, job: Job, path: Path): PanelPlan {
	const asked = benchFor(panel, job, path);
	checkMarks(asked);
	const bench = { ...asked, panel: withOwnMarks(panel) };
	const f = figuresOf(bench);
	const { problems } = bench.log;
	const nothing = { id: panel.id, name: panel.name, parts: [], coverings: [], needs: [] };
	if (!f) return { ...nothing, problems };
	const parts = panelParts(bench, f);
	const coverings = coveringsOf(bench, f);
	const both = f.both;
	return {
		id: panel.id,
		name: panel.name,
		parts: both ? [...parts.map(leftHand), ...parts.map(rightPart)] : parts,
		coverings: both ? [...coverings.map(leftHand), ...coverings.map(rightCovering)] : coverings,
		problems,
		needs: needsOf(bench, f),
		detail: { ...f, assembly: panelAssembly(f) },
	};
}

/** Null when the panel cannot be made, or must not be. */
function figuresOf(bench: Bench): Figures | null {
	const { panel } = bench;
	const opening = drawShape(panel.opening, bench.job.shop.ruler);
	complain(bench, ['opening'], opening.complaints);
	const board = boardAsked(bench, panel.material, ['material']);
	if (opening.outline === null || !board) return null;
	const fit = fitPanel(bench, opening);
	if (!fit) return null;
	return withFit(bench, fit, board.measured);
}

function withFit(bench: Bench, fit: Fit, thickness: Figures['thickness']): Figures | null {
	const { panel } = bench;
	const cloth = clothAsked(bench, panel.cloth, ['cloth']);
	const windows = windowFigures(bench, thickness);
	const layers = layerFigures(bench, thickness);
	const covers = coverFigures(bench, layers);
	const drawnZones = zoneFigures(bench);
	const zones = drawnZones.filter((z) => z !== null);
	const hinges = hingeFigures(bench);
	const devices = deviceFigures(bench, fit.board);
	const rings = ringFigures(bench);
	const size = grooveSize(bench);
	const groove = size && checkGroove(bench, size, thickness);
	const made = { fit, windows, layers, covers, rings, devices, zones };
	const figures: Figures = {
		...made,
		hand: panel.pair === null ? null : panel.pair === 'right' ? 'R' : 'L',
		both: panel.pair === 'both',
		label: `P${bench.number}`,
		cloth: cloth && { id: cloth.id, pressed: cloth.pressed, nap: panel.nap },
		foam: panel.foam?.thickness ?? ticks(0),
		cornerPatches: panel.cornerPatches,
		material: panel.material,
		thickness,
		leaves: hingeLeaves(bench, fit.board, hinges),
		groove: groove && routed(bench, made, groove),
		fixings: fixingFigure(bench, fit, groove, forbidden(made)),
		hinges,
		drills: drillsOf(bench, fit.board),
		seams: seamLines(bench, fit.board),
	};
	// Nobody knows what the panel would cover where a zone cannot be drawn.
	const allowed = check(bench, figures) && !drawnZones.includes(null);
	return allowed ? figures : null;
}

type Made = Pick<Figures, 'fit' | 'windows' | 'layers' | 'covers' | 'rings' | 'devices' | 'zones'>;

function routed(
	bench: Bench,
	made: Made,
	size: NonNullable<ReturnType<typeof grooveSize>>,
): GrooveFigure | null {
	const wrapped = made.windows.filter((w) => w.wrapped).map((w) => w.hole);
	return grooveFigure(bench, size, made.fit, wrapped, behind(made));
}

/** What is glued behind the board or cut through it: the groove stops there. */
function behind(made: Made): GrooveObstacle[] {
	const rim = 1600;
	return [
		...made.covers.map((c) => ({
			name: `the ledge of ${c.name}`,
			outline: c.ledge.outer,
			keep: rim,
		})),
		...made.layers.flatMap((l) =>
			l.place === 'recessed' && l.piece
				? [{ name: `the floor of ${l.name}`, outline: l.piece, keep: rim }]
				: [],
		),
	];
}

function forbidden(made: Made): { name: string; outline: Figures['fit']['board'] }[] {
	return [
		...made.zones.map((z) => ({ name: z.name, outline: z.outline })),
		...made.windows.map((w) => ({ name: w.name, outline: w.hole })),
		...made.covers.map((c) => ({ name: c.name, outline: c.ledge.outer })),
		...made.rings.map((r) => ({ name: r.name, outline: r.finished.outer })),
		...made.devices.map((d) => ({ name: d.name, outline: d.body })),
		...made.layers.flatMap((l) =>
			l.place === 'recessed' && l.piece ? [{ name: l.name, outline: l.piece }] : [],
		),
	];
}

/** All that is to be looked at; false where the panel must not be made. */
function check(bench: Bench, f: Figures): boolean {
	checkLies(bench, f);
	checkRims(bench, f);
	checkTurnUnder(bench, f);
	const allowed = checkZones(bench, f.fit.board, f.zones, f.covers, f.windows);
	const cutOuts = [...f.windows, ...f.covers].map((w) => ({ name: w.name, outline: w.hole }));
	checkDevices(bench, f.fit.board, f.devices, cutOuts);
	return allowed;
}
