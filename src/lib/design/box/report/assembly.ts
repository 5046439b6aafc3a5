import type { Box } from '../../../job';
import { type Board, type Role, along, screwFromEnd, screwsOf, type Seam } from '../board';
import type { AssemblyStep } from '../box-plan';
import type { Inside } from '../inside';
import { type Length, ticks, TICKS_PER_MM } from '../../../measure';

const squareMm = (area: number): number => area / TICKS_PER_MM ** 2;

/**
 * The order of putting together: layers on their boards, one closing board flat on the bench, the
 * others stood on it one by one, what goes inside, then the board that shuts it. A usual way,
 * common practice, no source.
 */
export function boxAssembly(
	box: Box,
	boards: readonly Board[],
	seams: readonly Seam[],
	labels: ReadonlyMap<string, string>,
	mounted: readonly MountedStep[],
): AssemblyStep[] {
	const named = (b: Board): string => `${labels.get(b.key) ?? ''} ${b.name}`.trim();
	const tapered = box.shape.kind === 'tapered';
	const [first, last] = tapered ? ['front', 'back'] : ['left', 'right'];
	const by = (roles: readonly Role[]): Board[] => boards.filter((b) => roles.includes(b.role));
	const round = by(['wall', 'end']).filter((b) => b.key !== first && b.key !== last);
	const builder = new Builder(box, boards, seams);
	builder.words(
		`Cut all holes${box.ends.fit === 'rabbet' && !tapered ? ' and rabbets' : ''}, then put the boards together dry and check the bevels.`,
	);
	builder.add(by(['doubler']), (b) => `Glue ${named(b)} on the inside of its board`);
	builder.place(first, (b) => `Lay ${named(b)} flat, outside down`);
	for (const b of round) builder.place(b.key, () => `Stand ${named(b)} on it`);
	builder.add(by(['divider']), (b) => `Set in ${named(b)}`);
	builder.add(by(['slot']), (b) => `Set in ${named(b)}`);
	for (const group of halvedGroups(by(['brace'])))
		builder.group(
			group,
			group.length > 1
				? `Slide ${group.map(named).join(', ')} together, glue in their slots, and set them in`
				: `Set in ${group.map(named).join()}`,
		);
	const cleats = by(['cleat']);
	if (cleats.length > 0)
		builder.group(cleats, `Glue the ${cleats.length} cleats into their corners`);
	if (box.fasteners.sealant)
		builder.words('Run sealant along every inside seam you can still reach and let it set.');
	if (box.lining) builder.words('Fix the lining while the box is open.');
	for (const step of mounted.filter((m) => m.within)) builder.words(step.text);
	builder.place(last, (b) => `Close with ${named(b)}`);
	builder.add(by(['overlay', 'ring']), (b) => `Glue on ${named(b)}`);
	for (const step of mounted.filter((m) => !m.within)) builder.words(step.text);
	return builder.steps;
}

/** Something fixed to a board that has its place in the order. */
interface MountedStep {
	readonly text: string;
	/** Can it be reached only while the box is open? */
	readonly within: boolean;
}

/** What is fixed on dividers and to boards: a driver that nothing reaches later, and devices. */
export function mountedSteps(
	framed: readonly {
		readonly name: string;
		readonly board: string;
		readonly front: number | null;
	}[],
	devices: Inside['devices'],
): MountedStep[] {
	return [
		...framed
			.filter((one) => one.front !== null)
			.map(({ name, board }) => ({
				text: `Fix ${name} on ${board} and lead its wires out while the box is open.`,
				within: true,
			})),
		...devices.map(({ name, device, place }) => {
			const screws = device.holes.length > 0 ? ` (${device.holes.length} screws)` : '';
			return {
				text: `Fix ${name} on the ${device.side} of ${place.wall.name}${screws}.`,
				within: device.side === 'inside',
			};
		}),
	];
}

/** Braces that are halved over each other go in as one; any other by itself. */
function halvedGroups(braces: readonly Board[]): Board[][] {
	const groups: Board[][] = [];
	for (const brace of braces) {
		const over = new Set(brace.holes.flatMap((h) => (h.halving ? [h.halving.over] : [])));
		const met = groups.filter((g) => g.some((b) => over.has(b.key)));
		for (const g of met) groups.splice(groups.indexOf(g), 1);
		groups.push([...met.flat(), brace]);
	}
	return groups;
}

class Builder {
	readonly steps: AssemblyStep[] = [];
	private readonly placed = new Set<string>();
	private readonly used = new Set<Seam>();
	constructor(
		private readonly box: Box,
		private readonly boards: readonly Board[],
		private readonly seams: readonly Seam[],
	) {}

	words(text: string): void {
		this.steps.push({ text, seams: [], glued: 0, screws: 0, apart: ticks(0) });
	}

	place(key: string, say: (b: Board) => string): void {
		const board = this.boards.find((b) => b.key === key);
		if (board) this.group([board], say(board));
	}

	add(boards: readonly Board[], say: (b: Board) => string): void {
		for (const b of boards) this.group([b], say(b));
	}

	/** One step: the seams that close now because both their boards are there. */
	group(boards: readonly Board[], text: string): void {
		for (const b of boards) this.placed.add(b.key);
		const keys = new Set(boards.map((b) => b.key));
		const closing = this.seams.filter(
			(s) =>
				!this.used.has(s) &&
				s.between.some((k) => keys.has(k)) &&
				s.between.every((k) => this.placed.has(k) || this.laterWall(k, s)),
		);
		for (const s of closing) this.used.add(s);
		const letters = closing.map((s) => s.letter).filter((l) => l !== '');
		const screws = closing.reduce((sum, s) => sum + screwsOf(s, this.box), 0);
		const glued = squareMm(closing.reduce((sum, s) => sum + s.area, 0));
		this.steps.push({
			text: `${text}.`,
			seams: letters,
			glued,
			screws,
			apart: screws > 0 ? spacingOf(closing, this.box) : ticks(0),
		});
	}

	/** A layer is glued to its wall before the wall itself is stood up. */
	private laterWall(key: string, seam: Seam): boolean {
		return seam.kind === 'face' && this.boards.some((b) => b.key === key);
	}
}

/** Widest even spacing among the screwed seams of a step. */
function spacingOf(closing: readonly Seam[], box: Box): Length {
	const screwed = closing.filter((s) => screwsOf(s, box) > 0);
	const each = screwed.map((s) => evenSpacing(s.length, box.fasteners.screwSpacing));
	return ticks(Math.round(Math.max(...each) / TICKS_PER_MM) * TICKS_PER_MM);
}

/** Distance between fasteners set evenly from one end of a seam to the other. */
export function evenSpacing(length: number, wanted: number): number {
	return (length - 2 * screwFromEnd(length)) / (along(length, wanted) - 1);
}
