/** What keeps the database from writing, in words and with what helps. */
export function faultWords(fault: unknown): string {
	const names = namesOf(fault);
	if (names.includes('NewerStore'))
		return 'A newer version of the planner is open in another window: reload this page.';
	if (names.includes('QuotaExceededError'))
		return "This browser's storage is full: make room, or save the job as a file.";
	if (names.includes('NoAnswer'))
		return "This browser's database does not answer: save the job as a file, or wait.";
	if (['NoStore', 'MissingAPIError', 'OpenFailedError'].some((name) => names.includes(name)))
		return 'This browser gives no database, as in a private window: save the job as a file.';
	return 'This browser cannot keep the job: save it as a file.';
}

/** A fault often carries the one behind it. */
function namesOf(fault: unknown): string[] {
	const names: string[] = [];
	for (let at = fault; at instanceof Error && names.length < 5; at = innerOf(at))
		names.push(at.name);
	return names;
}

const innerOf = (fault: Error & { inner?: unknown }): unknown => fault.inner ?? fault.cause;
