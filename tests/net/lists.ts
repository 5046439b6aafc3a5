import type { JobFile } from '../../src/lib/job/job';
import { RACK } from './rack';

/* The shop, the rack and a list of parts: what no box and no panel is needed for. */

const shop: NonNullable<JobFile['shop']> = {
	name: 'Bench & Blade',
	ruler: { unit: 'mm', fraction: 32, decimal: '.' },
	paper: 'a4',
	currency: 'EUR',
	saws: [
		{
			id: 'table',
			name: 'Table saw',
			kerf: 3.2,
			trim: 5,
			tiltLimit: 45,
			fenceLimit: 1200,
			narrowestRip: 20,
			stages: 4,
			first: 'any',
			packet: 40,
		},
		{ id: 'track', name: 'Track saw', kerf: 2.2, trim: 10 },
	],
	saw: 'table',
	method: 'saw',
	keep: { length: 300, width: 150 },
	profit: { by: 'margin', percent: 30 },
	tax: { percent: 19, labour: true },
	creditOffcuts: true,
	spare: 10,
};

const parts: NonNullable<JobFile['parts']> = [
	{ id: 'A', name: 'Side', material: 'ply', length: 700, width: 400, count: 3, grain: 'length' },
	{ id: 'B', material: 'mdf', length: 500, width: 300, count: 2, grain: 'any', note: 'Sand it.' },
	{
		id: 'C',
		material: 'ply',
		length: 440,
		width: 300,
		outline: [
			{ x: 0, y: 0 },
			{ x: 400, y: 0, bulge: 0.2 },
			{ x: 400, y: 300 },
			{ x: 0, y: 200 },
		],
	},
];

const sawn: JobFile = {
	name: 'Cabinet',
	number: '12',
	revision: 'B',
	date: '2026-11-20',
	customer: 'A. Person',
	vehicle: 'Van',
	notes: 'Deliver on Friday.',
	shop,
	stock: {
		...RACK,
		offcuts: [{ id: 'R1', material: 'ply', length: 760, width: 460, count: 1 }],
	},
	parts,
	seed: 1,
	look: { effort: 20, stopped: 1 },
};

const routed: JobFile = {
	...sawn,
	name: 'Routed',
	shop: { ...shop, method: 'router', router: { bit: 6, useHoles: true } },
};

const pinned: JobFile = {
	name: 'Half cut',
	took: {
		times: [{ what: 'Saw cuts', amount: 8, unit: 'cuts', estimated: 6, taken: 12 }],
		materials: [{ what: 'Plywood 12', unit: 'sheets', estimated: 1, taken: 2 }],
	},
	stock: RACK,
	parts: [{ id: 'A', material: 'ply', length: 700, width: 400, count: 2 }],
	ticked: { 'ply/1': [1] },
	options: [
		{
			...{ id: 'more', name: 'Three of them', note: 'Sturdier.' },
			changes: [{ path: 'parts/A/count', value: '3' }],
		},
	],
	sent: [
		{
			...{ date: '2026-11-21', net: 90, taxPercent: 10, taxed: 80, tax: 8, total: 98 },
			lines: [{ what: 'Parts cut', price: 90 }],
			options: [{ name: 'Four of them', note: 'Sturdier still.', total: 120 }],
		},
	],
	pinned: [
		{
			material: 'ply',
			sheet: 'buy/ply-full',
			length: 2440,
			width: 1220,
			placed: [{ id: 'part.A', x: 0, y: 0, length: 700, width: 400, turn: 0 }],
			cuts: [
				{
					n: 1,
					kind: 'rip',
					runs: 'x',
					region: { x: 0, y: 0, length: 2440, width: 1220 },
					at: 400,
					fence: 400,
					fenceEdge: 'bottom',
					gives: [
						{ kind: 'strip', rect: { x: 0, y: 0, length: 2440, width: 400 }, nextCut: 2 },
						{ kind: 'offcut', rect: { x: 0, y: 403.2, length: 2440, width: 816.8 } },
					],
				},
				{
					n: 2,
					kind: 'cross',
					runs: 'y',
					region: { x: 0, y: 0, length: 2440, width: 400 },
					at: 700,
					fence: 700,
					fenceEdge: 'left',
					gives: [
						{ kind: 'piece', rect: { x: 0, y: 0, length: 700, width: 400 }, id: 'part.A' },
						{ kind: 'waste', rect: { x: 703.2, y: 0, length: 1736.8, width: 400 } },
					],
				},
			],
			offcuts: [{ x: 0, y: 403.2, length: 2440, width: 816.8, label: 'R9' }],
			cut: true,
		},
	],
};

/** One part by hand, the rest round it. */
const byHand: JobFile = {
	...{ name: 'Laid by hand', shop, stock: RACK, parts: sawn.parts ?? [], seed: 1 },
	byHand: [
		{ material: 'ply', sheet: 'buy/ply-full', on: 0, part: 'part.A', x: 900, y: 420, turn: 0 },
		{ material: 'ply', sheet: 'buy/ply-full', on: 0, part: 'part.A', x: 40, y: 60, turn: 0 },
	],
};

/** Runs from lengths that have to be long enough, and from what is cut off. */
const wired: JobFile = {
	name: 'Wired',
	shop,
	stock: {
		sundries: [
			{ id: 'ring', name: 'Cable', kind: 'cable', pack: 5, price: 12, owned: 0.5 },
			{
				...{ id: 'hose', name: 'Hose', kind: 'hose', pack: 1, price: 2, lengths: 'cut' },
				breaks: [{ from: 3, price: 1.5 }],
			},
		],
	},
	runs: [
		{
			...{ id: 'W1', name: 'Feed', from: 'ring', count: 2, slack: 10 },
			stretches: [{ name: 'sill', length: 1850 }, { length: 620 }],
			one: { name: 'Battery', extra: 150 },
			other: { name: 'Distribution', extra: 200 },
		},
		{ id: 'H1', name: 'Drain', from: 'hose', stretches: [{ length: 900 }] },
	],
};

export const LISTS: readonly JobFile[] = [sawn, routed, pinned, byHand, wired];
