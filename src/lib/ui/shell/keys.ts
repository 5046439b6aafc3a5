/** What the keys do, as the list of keys says it. */
export const KEYS = [
	{ keys: '?', what: 'this list' },
	{ keys: 'Ctrl+S', what: 'save the job as a file; it is kept in this browser all the time' },
	{
		keys: 'Ctrl+P',
		what: 'print the paper that is shown in the chapter Print, else the bench pack',
	},
	{ keys: 'Ctrl+Z', what: 'undo' },
	{ keys: 'Ctrl+Y, Ctrl+Shift+Z', what: 'do it again' },
	{ keys: 'Alt+1 to Alt+6', what: 'Build, Boards, Cloth, Order, Quote, Print' },
	{ keys: 'Enter', what: 'in a field: the change is good' },
	{ keys: 'Escape', what: 'in a field or on a grip: take the change back' },
	{
		keys: 'Arrow keys',
		what: 'on a grip of the drawing or a part of a sheet: move it by a mark of the ruler',
	},
	{ keys: 'Shift+arrow keys', what: 'the same by ten marks' },
	{ keys: 'T', what: 'on a part of a sheet: turn it' },
] as const;

/** What a key press asks for, wherever the keyboard is; null for one that is none of ours. */
export function askedByKey(
	event: KeyboardEvent,
): 'undo' | 'redo' | 'save' | 'print' | 'keys' | number | null {
	const { key, ctrlKey, metaKey, altKey, shiftKey, code, target } = event;
	const low = key.toLowerCase();
	if ((ctrlKey || metaKey) && !altKey) {
		if (low === 'z') return shiftKey ? 'redo' : 'undo';
		if (low === 'y') return 'redo';
		if (low === 'p') return 'print';
		return low === 's' ? 'save' : null;
	}
	const [, digit] = /^Digit([1-6])$/.exec(code) ?? [];
	if (altKey && digit !== undefined && !ctrlKey && !metaKey) return Number(digit) - 1;
	const types = target instanceof Element && target.closest('input, textarea, select') !== null;
	return key === '?' && !types ? 'keys' : null;
}
