import { auditApart } from './apart';
import { CutAudit } from './cuts';
import { auditOutlines } from './outline';
import type {
	AuditFault,
	Piece,
	Placed,
	RouterProblem,
	SawProblem,
	Sheet,
	SheetLayout,
	SheetsAnswer,
} from '../types';

/*
 * Checks an answer on its own terms, in whole ticks, with nothing taken from the search that made
 * it. An empty list means that it may be cut.
 */

export function auditSheets(
	problem: SawProblem | RouterProblem,
	answer: SheetsAnswer,
): AuditFault[] {
	const pieces = new Map(problem.pieces.map((p) => [p.id, p]));
	return [
		...auditCounts(problem, answer),
		...auditStock(problem, answer),
		...auditClaims(answer),
		...answer.layouts.flatMap((layout) => auditLayout(problem, layout, pieces)),
	];
}

/** Everything asked for is placed once or named as not placed. */
function auditCounts(
	problem: SawProblem | RouterProblem,
	{ layouts, unplaced }: SheetsAnswer,
): AuditFault[] {
	const faults: AuditFault[] = [];
	const missing = new Map<string, number>();
	for (const u of unplaced) {
		missing.set(u.id, (missing.get(u.id) ?? 0) + u.count);
		if (u.why === '') faults.push({ where: u.id, what: 'It is left out without a reason.' });
	}
	const copies = new Map<string, Set<number>>();
	for (const p of layouts.flatMap((l) => l.placed)) {
		const seen = copies.get(p.id) ?? new Set();
		if (seen.has(p.copy)) faults.push({ where: p.id, what: `Copy ${p.copy} is laid twice.` });
		copies.set(p.id, seen.add(p.copy));
	}
	for (const { id, count } of problem.pieces) {
		const laid = copies.get(id)?.size ?? 0;
		if (laid + (missing.get(id) ?? 0) !== count)
			faults.push({
				where: id,
				what: `${count} asked for, ${laid} laid, ${missing.get(id) ?? 0} left out.`,
			});
		for (const copy of copies.get(id) ?? [])
			if (copy < 0 || copy >= count) faults.push({ where: id, what: `There is no copy ${copy}.` });
	}
	return faults;
}

/** No more sheets than there are, each of its true size, and what they cost. */
function auditStock(
	{ sheets }: SawProblem | RouterProblem,
	{ layouts, cost }: SheetsAnswer,
): AuditFault[] {
	const faults: AuditFault[] = [];
	let sum = 0;
	const used = new Map<string, Set<number>>();
	for (const l of layouts) {
		const sheet = sheets.find((s) => s.id === l.sheet);
		if (!sheet) {
			faults.push({ where: l.sheet, what: 'There is no such sheet.' });
			continue;
		}
		sum += sheet.price;
		const copies = used.get(l.sheet) ?? new Set();
		if (copies.has(l.copy)) faults.push({ where: l.sheet, what: `Sheet ${l.copy} is used twice.` });
		used.set(l.sheet, copies.add(l.copy));
		if (sheet.count !== null && copies.size > sheet.count)
			faults.push({ where: l.sheet, what: `More than the ${sheet.count} in the stock are used.` });
		if (l.length !== sheet.length || l.width !== sheet.width)
			faults.push({ where: l.sheet, what: 'The layout has another size than its sheet.' });
	}
	if (sum !== cost)
		faults.push({ where: 'cost', what: `The sheets cost ${sum}, the answer says ${cost}.` });
	return faults;
}

function auditClaims({ layouts, unplaced, cost, bound, proven }: SheetsAnswer): AuditFault[] {
	const faults: AuditFault[] = [];
	if (unplaced.length === 0 && (bound.cost > cost || bound.sheets > layouts.length))
		faults.push({ where: 'bound', what: 'The bound lies above the answer.' });
	if (proven && (unplaced.length > 0 || bound.cost !== cost))
		faults.push({ where: 'proven', what: 'The bound does not meet the answer.' });
	return faults;
}

function auditLayout(
	problem: SawProblem | RouterProblem,
	layout: SheetLayout,
	pieces: ReadonlyMap<string, Piece>,
): AuditFault[] {
	const sheet = problem.sheets.find((s) => s.id === layout.sheet);
	if (!sheet) return [];
	const where = `sheet ${layout.sheet}, copy ${layout.copy}`;
	const lying = layout.placed.flatMap((p) => auditPlaced(p, pieces.get(p.id), sheet, where));
	if ('kerf' in problem)
		return [
			...lying,
			...auditApart(layout.placed, pieces, problem.kerf, where),
			...new CutAudit(problem, sheet, layout, where).run(),
		];
	const plain = layout.placed.filter((p) => {
		const piece = pieces.get(p.id);
		// shapes may nestle; they are audited as outlines
		return !piece?.outline && !piece?.holes?.length;
	});
	if (plain.length === layout.placed.length)
		return [...lying, ...auditApart(plain, pieces, problem.bit, where)];
	return [...lying, ...auditOutlines(layout.placed, problem.pieces, problem.bit, where)];
}

/** One piece: known, of its own size, turned as allowed, and within the trimmed sheet. */
function auditPlaced(
	p: Placed,
	piece: Piece | undefined,
	sheet: Sheet,
	where: string,
): AuditFault[] {
	const fault = (what: string): AuditFault => ({
		where,
		what: `${p.id} (copy ${p.copy}): ${what}`,
	});
	if (!piece) return [fault('no such piece was asked for.')];
	const faults: AuditFault[] = [];
	const quarter = p.turn === 90 || p.turn === 270;
	const [length, width] = quarter ? [piece.width, piece.length] : [piece.length, piece.width];
	if (p.length !== length || p.width !== width)
		faults.push(fault('it has another size than asked for.'));
	const turns = { none: [0], half: [0, 180], any: [0, 90, 180, 270] }[piece.turns];
	if (!turns.includes(p.turn)) faults.push(fault(`it may not be turned by ${p.turn} degrees.`));
	const { left, right, bottom, top } = sheet.trim;
	const inside =
		p.x >= left &&
		p.y >= bottom &&
		p.x + p.length <= sheet.length - right &&
		p.y + p.width <= sheet.width - top;
	if (!inside) faults.push(fault('it leaves the sheet or its trim.'));
	return faults;
}
