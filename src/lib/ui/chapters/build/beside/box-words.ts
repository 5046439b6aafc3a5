import type { BoxFigures } from '../../../../design';
import { type Box, clothOf, materialOf } from '../../../../job';
import { type Ruler, showVolume } from '../../../../measure';
import type { Plan } from '../../../../plan';
import { figuresOn } from '../../../../print';

/** A planned box as the words speak of it. */
export interface SaidBox {
	readonly box: Box;
	readonly figures: BoxFigures;
	readonly plan: Plan;
	readonly ruler: Ruler;
}

const FORMS: Readonly<Record<Box['shape']['kind'], string>> = {
	plain: 'Plain',
	slanted: 'Slanted',
	stepped: 'Stepped',
	truncated: 'With a corner cut off',
	free: 'Of free corners',
	tapered: 'Tapered both ways',
};

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];
const counted = (n: number, one: string, many = `${one}s`): string =>
	`${SMALL[n] ?? n} ${n === 1 ? one : many}`;
const joined = (parts: readonly string[], none: string): string =>
	parts.filter((p) => p !== '').join(', ') || none;

/** What the box is, in a sentence. */
export function boxSentence({ box, figures, plan, ruler }: SaidBox): string {
	const board = materialOf(plan.job, box.material);
	const f = figuresOn(ruler);
	const by = figures.radiators.length > 0 ? 'with passive radiators' : 'vented';
	const air = figures.chambers.some((c) => c.vented) ? by : 'sealed';
	const drivers = box.drivers.reduce((n, d) => n + d.count, 0);
	const on = [...new Set(box.drivers.map((d) => d.board.replaceAll('-', ' ')))];
	const words = [
		FORMS[box.shape.kind],
		air,
		board ? `${board.name} (${f.length(board.measured)} measured)` : '',
		drivers > 0 ? `${counted(drivers, 'driver')} on the ${on.join(' and the ')}` : '',
		box.count > 1 ? `${box.count} alike` : '',
	];
	return `${joined(words, '')}.`;
}

/** What each group of a box holds, in a line. */
export function boxLines(said: SaidBox): Readonly<Record<string, string>> {
	const { box, figures, plan, ruler } = said;
	const f = figuresOn(ruler);
	const { width, height, depth } = figures.outside;
	const leans = figures.leans.map((l) => `${l.board} leans ${f.angle(l.angle)}`);
	const carpet = box.carpet;
	const cloth = carpet && clothOf(plan.job, carpet.cloth);
	return {
		form: joined([`${f.bench(width)} × ${f.bench(height)} × ${f.bench(depth)}`, ...leans], ''),
		volume: volumeLine(said),
		drivers: driversLine(said),
		vents: joined(
			figures.vents.map((v) => `${v.kind === 'round' ? 'tube' : 'slot'} ${f.bench(v.length)} long`),
			'none',
		),
		inside: insideLine(box),
		space: spaceLine(said),
		boards: joined([boardOf(said), JOINTS[box.joint]], ''),
		mounted: joined(
			[
				box.terminal ? `terminal in the ${box.terminal.board}` : '',
				box.devices.length > 0 ? counted(box.devices.length, 'device') : '',
				box.tieDowns.length > 0 ? counted(box.tieDowns.length, 'tie-down point') : '',
			],
			'none',
		),
		carpet: carpet
			? joined(
					[
						cloth?.name ?? '',
						carpet.cover.length > 0 ? counted(carpet.cover.length, 'face') : 'all faces',
					],
					'',
				)
			: 'none',
		name: joined([box.count > 1 ? `${box.count} alike` : '', box.note.slice(0, 40)], box.id),
	};
}

const JOINTS: Readonly<Record<Box['joint'], string>> = {
	'level-past': 'top and bottom run past',
	'upright-past': 'front and back run past',
	mitre: 'all mitred',
};

function boardOf({ box, plan, ruler }: SaidBox): string {
	const board = materialOf(plan.job, box.material);
	return board ? `${figuresOn(ruler).length(board.measured)} measured` : '';
}

function volumeLine({ box, figures, ruler }: SaidBox): string {
	const net = figures.chambers.reduce((sum, c) => sum + c.net, 0);
	const { target } = box;
	if (!target) return `${showVolume(net, ruler)} net`;
	const gives = figures.solved
		? `, ${figures.solved.dimension} gives way`
		: ` of ${showVolume(target.litres, ruler)} wanted`;
	return `${showVolume(net, ruler)} net${gives}`;
}

function driversLine({ box, figures, ruler }: SaidBox): string {
	const f = figuresOn(ruler);
	return joined(
		box.drivers.map((d, i) => {
			const size = d.cutout.kind === 'round' ? ` of ${f.bench(d.cutout.diameter)}` : '';
			const room = figures.drivers[i]?.room;
			return `${d.count}${size}${room ? `, ${f.bench(room)} room behind` : ''}`;
		}),
		'none',
	);
}

function insideLine(box: Box): string {
	const braces = box.braces.length;
	return joined(
		[
			...box.doublers.map(
				(d) => `${d.layers === 1 ? 'doubled' : 'thicker'} ${d.board.replaceAll('-', ' ')}`,
			),
			braces > 0 ? counted(braces, 'brace') : '',
			box.dividers.length > 0 ? counted(box.dividers.length, 'divider') : '',
			box.cleats ? 'cleats' : '',
		],
		'nothing',
	);
}

function spaceLine({ box, figures }: SaidBox): string {
	const { fits, passes, turn } = figures.fit;
	if (fits === null && passes === null) return 'not measured yet';
	return joined(
		[
			fits === null ? '' : fits ? 'it goes in' : 'it does not fit',
			passes === false ? 'it does not pass the opening' : '',
			passes && turn ? turn.replace(/\.$/, '').slice(0, 48) : '',
		],
		box.space ? 'measured' : '',
	);
}

/** Room that is left in the measured space, the least of the three ways; null without a space. */
export function roomToSpare(box: Box, { fit }: BoxFigures): number | null {
	const { space } = box;
	if (!space) return null;
	const free = space.clearance;
	return Math.min(
		space.width - 2 * free - fit.wrapped.width,
		space.height - free - fit.wrapped.height,
		space.depth - free - box.standOff - fit.wrapped.depth,
	);
}
