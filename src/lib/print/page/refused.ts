import type { AuditFault } from '../../nest';
import { space, type Block } from './flow';
import { table } from './table';
import { heading, paragraph } from './paragraphs';

/** A layout that failed its check is never printed; the page says why. */
export function refusedBlocks(what: string, faults: readonly AuditFault[], width: number): Block[] {
	return [
		heading(`Not printed: the layouts of ${what}`, width),
		paragraph(
			'Every layout is checked on its own terms before it is printed. This one did not pass, so it must not be cut. Please keep the job file and report it.',
			width,
		),
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
