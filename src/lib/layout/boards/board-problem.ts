import { materialOf, type Job, type Material, sawOf } from '../../job';
import type { Part } from '../../design';
import type { Piece } from '../../nest';
import type { BoardLayouts } from '../layouts';
import { sheetStock } from './sheet-stock';

/**
 * Parts of one material as the nest sees them: sizes, counts and the turns that the grain leaves.
 */
export function pieces(parts: readonly Part[], material: Material | null): Piece[] {
	return parts.map((part) => ({
		id: part.id,
		length: part.length,
		width: part.width,
		count: part.count,
		// Half a turn keeps the grain; a part is never flipped, so its show face stays up.
		turns: material?.grain && part.grain === 'length' ? 'half' : 'any',
		...(part.outline ? { outline: part.outline } : {}),
		...(part.holes.length > 0 ? { holes: part.holes } : {}),
	}));
}

/** The question put to the nest for one material. */
export function boardProblem(
	job: Job,
	material: string,
	parts: readonly Part[],
): BoardLayouts['problem'] {
	const sheets = sheetStock(job, material);
	const asked = pieces(parts, materialOf(job, material));
	if (job.shop.method === 'router') {
		const { bit, useHoles } = job.shop.router;
		return { method: 'router', bit, useHoles, sheets, pieces: asked, keep: job.shop.keep };
	}
	const saw = sawOf(job);
	return {
		method: 'saw',
		kerf: saw.kerf,
		sheets,
		pieces: asked,
		stages: saw.stages,
		fenceLimit: saw.fenceLimit,
		narrowestRip: saw.narrowestRip,
		keep: job.shop.keep,
		first: saw.first,
		ruler: job.shop.ruler,
	};
}
