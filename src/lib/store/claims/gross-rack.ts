import { grainsOf, isDivided } from './claim';
import { countedLines, typedCount, withMore } from './counted';
import { LIST_NAMES, type ListName } from './lists';
import { isOnRack, isOwn, type NetLine, type NetRack } from './net-rack';
import { byRight, standing } from './verdict';

/** What is to be kept of the rack after the person has changed it. */
export interface GrossRack {
	readonly stock: unknown;
	/** What was booked of units whose line, or whose count, was taken out, in grains. */
	readonly kept: ReadonlyMap<string, number>;
}

/**
 * The rack as it is to be kept, from the rack as the person left it. Who counts the rack and says
 * how many there are has counted after every booking known so far: those all stand from then on,
 * and what was typed is what the rack shows.
 *
 * @param shown the stock as it was shown: alike to that of `rack`, line by line
 * @param after the stock as it was typed; a list that is the same object as before is unchanged
 */
export function grossRack(rack: NetRack, shown: unknown, after: unknown): GrossRack {
	if (after === shown) return { stock: rack.gross, kept: new Map() };
	const [before, now] = [fieldsOf(shown), fieldsOf(after)];
	const kept = new Map<string, number>();
	const stock = { ...now };
	for (const name of LIST_NAMES) {
		if (before[name] === now[name]) {
			if (name in now) stock[name] = fieldsOf(rack.gross)[name];
			continue;
		}
		const list: readonly unknown[] = Array.isArray(now[name]) ? now[name] : [];
		const lines = asShown(rack.lines[name], before[name]);
		const from = linesBehind(lines, list);
		if (Array.isArray(now[name])) stock[name] = grossList({ rack, name, lines }, list, from);
		for (const [unit, count] of keptOf({ rack, name, lines }, list, from)) kept.set(unit, count);
	}
	return { stock: isObject(after) ? stock : after, kept };
}

type Fields = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Fields =>
	typeof value === 'object' && value !== null && !Array.isArray(value);
const fieldsOf = (value: unknown): Record<string, unknown> => (isObject(value) ? value : {});

/** One list of the rack, its lines as they were shown. */
interface Listed {
	readonly rack: NetRack;
	readonly name: ListName;
	readonly lines: readonly NetLine[];
}

/** The lines with the very objects that were shown of them. */
function asShown(lines: readonly NetLine[], shown: unknown): NetLine[] {
	let n = 0;
	return lines.map((line) => {
		if (!isOnRack(line)) return line;
		return { ...line, net: Array.isArray(shown) ? (shown[n++] as unknown) : line.net };
	});
}

/** The lines with what is booked of them, and those that are not on the rack in their places. */
function grossList(
	{ rack, name, lines }: Listed,
	after: readonly unknown[],
	from: readonly (NetLine | null)[],
): unknown[] {
	const hidden = hiddenAfter(lines, new Set(from));
	const list = [...(hidden.get(null) ?? [])];
	after.forEach((line, i) => {
		const behind = from[i] ?? null;
		list.push(grossLine(rack, name, line, behind));
		if (behind) list.push(...(hidden.get(behind) ?? []));
	});
	return list;
}

/** For each line as typed the line it was: the very same, or the one of the same mark. */
function linesBehind(lines: readonly NetLine[], after: readonly unknown[]): (NetLine | null)[] {
	const free = new Set(lines.filter(isOnRack));
	const take = (line: NetLine | undefined): NetLine | null =>
		line && free.delete(line) ? line : null;
	const same = new Map([...free].map((line) => [line.net, line]));
	const found = after.map((line) => take(same.get(line)));
	return found.map((line, i) => {
		const { id } = fieldsOf(after[i]);
		return line ?? take([...free].find(({ kept }) => kept.id === id && id !== undefined));
	});
}

/** Lines that are not on the rack, by the last line before them that stays; null for none. */
function hiddenAfter(
	lines: readonly NetLine[],
	stays: ReadonlySet<NetLine | null>,
): Map<NetLine | null, unknown[]> {
	const groups = new Map<NetLine | null, unknown[]>();
	let last: NetLine | null = null;
	for (const line of lines) {
		if (stays.has(line)) last = line;
		if (!isOnRack(line)) groups.set(last, [...(groups.get(last) ?? []), line.kept.line]);
	}
	return groups;
}

function grossLine(rack: NetRack, name: ListName, line: unknown, behind: NetLine | null): unknown {
	if (behind && line === behind.net) return behind.kept.line;
	const [counted] = countedLines({ [name]: [line] }, name);
	if (!counted || counted.count === null) return line;
	const taken = behind?.taken ?? 0;
	const isTyped = !behind || typedCount(line, name) !== typedCount(behind.net, name);
	const more = isTyped ? moreBehind(rack, counted.unit, counted.count, taken) : taken;
	return withMore(line, name, more);
}

/**
 * How much more is to be kept than was typed, so that the rack shows what was typed and all
 * bookings of others stand. Where less was typed than is held for the job itself, some of those
 * that come after it cannot.
 */
function moreBehind(rack: NetRack, unit: string, typed: number, taken: number): number {
	const claims = rack.onUnit.get(unit) ?? [];
	const others = claims.filter((claim) => !isOwn(claim, rack.marks));
	const lost = others.filter((claim) => !rack.verdict.won.has(claim));
	const all = lost.reduce((sum, claim) => sum + grainsOf(claim), taken);
	if (others.length === claims.length || isDivided(unit)) return all;
	const row = claims.toSorted(byRight);
	const stood = others.length - lost.length;
	const shown = (more: number): number => {
		const room = typed + more - (taken - stood);
		return room - standing(row, room).filter((claim) => others.includes(claim)).length;
	};
	let more = all;
	while (more > 0 && shown(more) > typed) more--;
	return more;
}

/** What was booked of a line goes on being booked when the line, or its count, is taken out. */
function keptOf(
	{ rack, name, lines }: Listed,
	after: readonly unknown[],
	from: readonly (NetLine | null)[],
): Map<string, number> {
	const counted = countedLines({ [name]: after }, name);
	const stays = new Set(from.filter((_, i) => counted[i]?.count !== null));
	const kept = new Map<string, number>();
	for (const line of lines) {
		if (!isOnRack(line) || stays.has(line) || line.taken === 0) continue;
		const { unit } = line.kept;
		kept.set(unit, (kept.get(unit) ?? rack.marks.kept.get(unit) ?? 0) + line.taken);
	}
	return kept;
}
