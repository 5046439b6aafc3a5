import type { Job } from '../job';
import type { Blank } from './blank';

/*
 * Contact adhesive has to dry to the touch and then be closed within its open time. What cannot be
 * coated, left to dry and laid in that time is glued in stages, from the middle outwards, so that
 * no air is shut in.
 */

/**
 * How fast a person works with the adhesive at hand. Minutes, and square metres of FACE a minute.
 */
export interface Pace {
	/** From the first stroke until the film no longer bonds. */
	readonly open: number;
	/** Left to dry before the faces are closed. */
	readonly dry: number;
	readonly coat: number;
	/** Square metres laid and rubbed down a minute. */
	readonly lay: number;
}

/** Common practice, no source: the tin or can has the last word. */
export const PACE: Readonly<Record<'sprayed' | 'brushed', Pace>> = {
	sprayed: { open: 30, dry: 8, coat: 0.4, lay: 0.08 },
	brushed: { open: 45, dry: 15, coat: 0.15, lay: 0.08 },
};

/**
 * The pace of a shop: the usual one for its way, with the open time off the tin where it is known.
 */
export function paceOf(adhesive: {
	readonly way: keyof typeof PACE;
	readonly open: number | null;
}): Pace {
	const usual = PACE[adhesive.way];
	// A film that closes sooner also dries sooner: it keeps its share of the open time.
	return adhesive.open === null
		? usual
		: { ...usual, open: adhesive.open, dry: (usual.dry * adhesive.open) / usual.open };
}

/**
 * Bonded square metres one stage can take: both faces are coated, dry together, and are laid while
 * the first film is still open.
 */
export function stageArea(pace: Pace): number {
	return Math.max(0, pace.open - pace.dry) / (2 / pace.coat + 1 / pace.lay);
}

/** How many stages a bonded area (mm2) is glued in; 1 when it can be done in one go. */
export function stagesFor(bonded: number, pace: Pace): number {
	const most = stageArea(pace);
	if (most <= 0) throw new Error('bug: a pace that never gets anything laid');
	return Math.max(1, Math.ceil(bonded / 1e6 / most - 1e-9));
}

/** What to write on a blank that takes more than one stage; null when it does not. */
export function stageNote({ bonded }: Pick<Blank, 'bonded'>, pace?: Pace): string | null {
	return inStages('Glue it in', bonded, pace);
}

/** The same for the foam that is glued on before it. */
export function foamStageNote({ foam = 0 }: Pick<Blank, 'foam'>, pace?: Pace): string | null {
	return inStages('Glue the foam on in', foam, pace);
}

function inStages(glue: string, bonded: number, pace: Pace = PACE.brushed): string | null {
	const n = stagesFor(bonded, pace);
	if (n === 1) return null;
	const share = Math.round((bonded / 1e6 / n) * 100) / 100;
	return (
		`${glue} ${n} stages of about ${share} m² each, from the middle outwards: coat both faces of one strip, let them dry, ` +
		`lay it, then coat the next. Counted on ${pace.open} minutes of open time; go by the tin.`
	);
}

/** One go of gluing; minutes. */
export interface Gluing {
	readonly what: 'foam on the board' | 'cloth';
	readonly n: number;
	readonly of: number;
	/** Of one face, m2. */
	readonly area: number;
	/** To coat both faces. */
	readonly coat: number;
	readonly dry: number;
	readonly lay: number;
	/** The film no longer bonds after this. */
	readonly open: number;
}

/** All stages in which one piece of a blank is glued, its foam first. */
export function gluingOf(
	{ foam = 0, bonded }: Pick<Blank, 'foam' | 'bonded'>,
	job: Pick<Job, 'shop'>,
): Gluing[] {
	const pace = paceOf(job.shop.adhesive);
	return [...stagesOf('foam on the board', foam, pace), ...stagesOf('cloth', bonded, pace)];
}

function stagesOf(what: Gluing['what'], mm2: number, pace: Pace): Gluing[] {
	if (mm2 <= 0) return [];
	const of = stagesFor(mm2, pace);
	const area = mm2 / 1e6 / of;
	const { open, dry } = pace;
	const times = { coat: (2 * area) / pace.coat, dry, lay: area / pace.lay, open };
	return Array.from({ length: of }, (_, i) => ({ what, n: i + 1, of, area, ...times }));
}
