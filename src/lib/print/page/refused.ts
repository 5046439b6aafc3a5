import type { AuditFault } from '../../nest';
import { REFUSED_PAGE } from '../wording';
import { space, type Block } from './flow';
import { table } from './table';
import { heading, paragraph } from './paragraphs';

/** A layout that failed its check is never printed; the page says why. */
export function refusedBlocks(what: string, faults: readonly AuditFault[], width: number): Block[] {
	return [
		heading(`Not printed: the layouts of ${what}`, width),
		paragraph(REFUSED_PAGE, width),
		space(3),
		...table(
			{
				columns: [
					{ head: 'Where', width: { share: 1 } },
					{ head: 'What the check found', width: { share: 2 } },
				],
				rows: faults.map((f) => ({ cells: [f.where, f.what] })),
			},
			width,
		),
	];
}
