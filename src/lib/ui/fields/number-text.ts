/** What goes into the file for a typed number: the number, or the text as it is when it is none. */
export function storeNumber(text: string, decimal: '.' | ','): number | string {
	const typed = text.trim();
	const point = typed.replace('−', '-').replace(decimal, '.');
	const wrongSign = decimal === ',' && typed.includes('.');
	return /^-?(\d+(\.\d*)?|\.\d+)$/.test(point) && !wrongSign ? Number(point) : typed;
}

/** The text of a field for the number the file holds. */
export function showNumber(stored: unknown, decimal: '.' | ','): string {
	if (stored === undefined || stored === null) return '';
	return typeof stored === 'number' ? String(stored).replace('.', decimal) : String(stored);
}
