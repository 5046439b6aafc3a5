import { type Fields, isFields } from './fields';

/**
 * Version 0 gave a board one `thickness`; since version 1 the nominal and the measured one are told
 * apart.
 */
export function from0(old: Fields): Fields {
	const lifted: Fields = { ...old, format: 'kerf-and-nap job', version: 1 };
	const stock = old['stock'];
	if (!isFields(stock) || !Array.isArray(stock['materials'])) return lifted;
	return { ...lifted, stock: { ...stock, materials: boards(stock).map(lift) } };
}

/** Has the file a board in the manner of version 0? */
from0.fits = (file: Fields): boolean => {
	const stock = file['stock'];
	if (file['format'] !== undefined || !isFields(stock)) return false;
	return boards(stock).some((board) => isFields(board) && 'thickness' in board);
};

/** Measured is taken as nominal: that is what a version 0 plan was reckoned with. */
function lift(board: unknown): unknown {
	if (!isFields(board) || !('thickness' in board)) return board;
	const { thickness, ...rest } = board;
	return { nominal: thickness, measured: thickness, ...rest };
}

function boards(stock: Fields): readonly unknown[] {
	return Array.isArray(stock['materials']) ? stock['materials'] : [];
}
