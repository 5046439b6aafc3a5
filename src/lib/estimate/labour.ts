import type { Part } from '../design';
import { foamMinutes, type Job } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { type Length, toMm, money } from '../measure';
import { settingsFor, type Cut } from '../nest';
import type { ReelPlan } from '../runs';
import type { Blank } from '../wrap';
import type { LabourLine } from './types';

/** What the plan knows about the work, counted. */
export interface Work {
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	/** Seams in all the cloth. */
	readonly seamLength: Length;
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	/** What is still to be cut of cables, looms and hoses. */
	readonly reels: readonly ReelPlan[];
	readonly boxes: number;
	readonly panels: number;
}

const MM2_PER_M2 = 1e6;

/** Work that hangs on how the sheets are laid out, and on nothing else. */
const AT_THE_SAW = ['Sheets handled', 'Saw cuts', 'Length of saw cut', 'Fence settings'] as const;

/** Is this a line of work at the saw? */
export const isAtTheSaw = ({ what }: Pick<LabourLine, 'what'>): boolean =>
	AT_THE_SAW.some((name) => name === what);

/**
 * Labour by kind of work, at the shop's minutes for each, then the hours typed for this job. Lines
 * with nothing to do are left out.
 */
export function labourLines(job: Job, work: Work): LabourLine[] {
	const { minutes, hour } = job.shop.labour;
	const layouts = work.boards.flatMap((b) => b.answer.layouts.filter((_, i) => !b.sources[i]?.cut));
	const cuts = layouts.flatMap((l) => l.cuts);
	const line = (what: string, amount: number, unit: string, each: number): LabourLine => ({
		what,
		amount,
		unit,
		minutes: amount * each,
		cost: money((amount * each * hour) / 60),
	});
	const settings = layouts.reduce((all, l) => all + settingsFor(l.cuts), 0);
	const sum = (of: (blank: Blank) => number): number =>
		work.blanks.reduce((total, b) => total + of(b) * b.count, 0);
	return [
		line(AT_THE_SAW[0], layouts.length, 'sheets', minutes.sheet),
		line(AT_THE_SAW[1], cuts.length, 'cuts', minutes.cut),
		line(AT_THE_SAW[2], metresCut(cuts), 'm', minutes.cutMetre),
		line(AT_THE_SAW[3], settings, 'settings', minutes.setting),
		line('Parts marked and eased', counted(work.parts), 'parts', minutes.part),
		line('Routed edges', routed(work.parts), 'm', minutes.routedMetre),
		line('Foam bonded', sum((b) => b.foam ?? 0) / MM2_PER_M2, 'm2', foamMinutes(job)),
		line('Cloth bonded', sum((b) => b.bonded) / MM2_PER_M2, 'm2', minutes.bondedSquareMetre),
		line('Cloth cut along outlines', alongOutlines(work.cloths), 'm', minutes.outlineMetre),
		line('Seams cut', toMm(work.seamLength) / 1000, 'm', minutes.seamMetre),
		line(
			'Wrapped corners',
			sum((b) => b.reliefs.corners),
			'corners',
			minutes.corner,
		),
		line(
			'Relief cuts',
			sum((b) => b.reliefs.notches + b.reliefs.slits),
			'cuts',
			minutes.relief,
		),
		line('Cables, looms and hoses cut', lengthsCut(work.reels), 'lengths', minutes.run),
		line('Panels put together', work.panels, 'panels', minutes.panel),
		line('Boxes put together', work.boxes, 'boxes', minutes.box),
		...job.work.map((typed) => ({
			what: typed.what,
			amount: typed.hours,
			unit: 'h',
			minutes: typed.hours * 60,
			cost: money(typed.hours * (typed.hour ?? hour)),
		})),
	].filter((l) => l.amount > 0);
}

function alongOutlines(cloths: Work['cloths']): number {
	const rolls = cloths.flatMap((c) => c.rolls);
	return rolls.reduce((sum, roll) => sum + toMm(roll.along ?? 0), 0) / 1000;
}

const lengthsCut = (reels: readonly ReelPlan[]): number =>
	reels.flatMap((r) => r.lengths).reduce((sum, { runs }) => sum + runs.length, 0);

function metresCut(cuts: readonly Cut[]): number {
	const along = (c: Cut): number => (c.runs === 'x' ? c.region.length : c.region.width);
	return cuts.reduce((sum, c) => sum + toMm(along(c)), 0) / 1000;
}

function counted(parts: readonly Part[]): number {
	return parts.reduce((sum, p) => sum + p.count, 0);
}

function routed(parts: readonly Part[]): number {
	return parts.reduce((sum, p) => sum + toMm(p.routed) * p.count, 0) / 1000;
}
