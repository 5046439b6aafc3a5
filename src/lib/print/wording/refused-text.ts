import type { AuditFault } from '../../nest';

/** The page that stands where the layouts would. */
export const REFUSED_PAGE =
	'Every layout is checked on its own terms before it is printed. This one did not pass, so it must not be cut. Please keep the job file and report it.';

/** The same beside a layout on screen, with what the check found. */
export function refusedText(faults: readonly AuditFault[]): string {
	const found = faults.map((f) => `${f.where}: ${f.what}`).join('; ');
	return `This layout did not pass its check and must not be cut: ${found}`;
}
