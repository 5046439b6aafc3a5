import { type Ruler, mm, sayLength } from '../../measure';
import { type Claim, isDivided, unitOf } from './claim';
import { LIST_NAMES, LISTS } from './lists';
import { isOwn, type NetRack } from './net-rack';
import { byRight, counts } from './verdict';

/**
 * In words, each booking that has not got what it claims: what and whose it is, who has it instead,
 * what follows, and what would be right.
 */
export function lostWords(rack: NetRack, ruler: Ruler): string[] {
	const { verdict, onUnit } = rack;
	const lost = verdict.lost.map((claim) => {
		const row = (onUnit.get(unitOf(claim.takes)) ?? []).toSorted(byRight);
		const holders = row.filter((c) => verdict.won.has(c));
		const doing = claim.cut ? 'booked' : 'held';
		return `${capital(unitWords(claim, ruler))}, ${doing} by ${claim.by} (${dayOf(claim.at)}), is not on the rack for it: ${whyNot(rack, claim, holders, ruler)}. ${whatFollows(claim)}${whatIsRight(claim)}`;
	});
	return [...lost, ...shortWords(rack, ruler)];
}

/** In words, the bookings that a step taken back has left with nothing. */
export function fallenWords(fallen: readonly Claim[], ruler: Ruler): string {
	return fallen
		.map(
			(claim) =>
				`${unitWords(claim, ruler)} has been booked by ${claim.by} since: that booking stays`,
		)
		.map((words) => `${capital(words)} and is told on the rack`)
		.join('. ');
}

/** One claim that is not cut: what is held, by whom, since when. */
export interface HeldLine {
	readonly id: string;
	readonly what: string;
	readonly by: string;
	/** The day, in words. */
	readonly since: string;
	/** Is it held for the job that looks? */
	readonly own: boolean;
}

/** Who holds what of the rack for work that is not cut yet, in the order in which it was held. */
export function heldLines({ verdict, marks }: NetRack, ruler: Ruler): HeldLine[] {
	return [...verdict.won]
		.filter((claim) => !claim.cut)
		.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))
		.map((claim) => ({
			id: claim.id,
			what: unitWords(claim, ruler),
			by: claim.by,
			since: dayOf(claim.at),
			own: isOwn(claim, marks),
		}));
}

function unitWords({ takes }: Pick<Claim, 'takes'>, ruler: Ruler): string {
	switch (takes.kind) {
		case 'owned':
			return `a sheet “${takes.id}”`;
		case 'roll':
			return `${sayLength(mm(takes.amount), ruler)} of roll “${takes.id}”`;
		case 'sundry':
			return `${packs(takes.amount, ruler)} of “${takes.id}”`;
		default:
			return `offcut “${takes.id}”`;
	}
}

function packs(amount: number, { decimal }: Ruler): string {
	const text = String(Number(amount.toFixed(3))).replace('.', decimal);
	return `${text} ${amount === 1 ? 'pack' : 'packs'}`;
}

function whyNot(rack: NetRack, claim: Claim, holders: readonly Claim[], ruler: Ruler): string {
	const unit = unitOf(claim.takes);
	if (!isDivided(unit)) return holders.length === 0 ? 'there is none' : hasIt(holders);
	const lines = Object.values(rack.lines).flat();
	const net = lines
		.filter(({ kept }) => kept.unit === unit)
		.reduce((sum, { kept, taken }) => sum + (kept.count ?? 0) - taken, 0);
	const list = LIST_NAMES.find((name) => unit.startsWith(`${LISTS[name].kind}/`));
	const left = net / LISTS[list ?? 'rolls'].grains;
	if (left <= 0 && holders.length === 0) return 'there is none';
	const there = claim.takes.kind === 'roll' ? sayLength(mm(left), ruler) : packs(left, ruler);
	return `${there} ${left === 1 ? 'is' : 'are'} left${holders.length > 0 ? `, ${hasIt(holders)} before` : ''}`;
}

function hasIt(holders: readonly Claim[]): string {
	const booked = holders.some(({ cut }) => cut) ? 'booked it' : 'hold it';
	const names = [...new Set(holders.map(({ by }) => by))];
	return `${listed(names)} ${names.length === 1 && booked === 'hold it' ? 'holds it' : booked}`;
}

/** More was settled long ago than the rack ever said: nobody is named any more. */
function shortWords({ lines, marks }: NetRack, ruler: Ruler): string[] {
	const there = counts(
		Object.values(lines)
			.flat()
			.map(({ kept }) => kept),
	);
	return [...marks.settled].flatMap(([unit, grains]) => {
		const short = grains - (there.get(unit) ?? 0) - (marks.kept.get(unit) ?? 0);
		if (short <= 0 || unit.startsWith('sundry/')) return [];
		const [kind, id] = [unit.slice(0, unit.indexOf('/')), unit.slice(unit.indexOf('/') + 1)];
		const much = kind === 'roll' ? sayLength(short, ruler) : String(short);
		return [
			`${much} more of “${id}” was booked long ago than the rack says there was. Count again and type what is on the rack.`,
		];
	});
}

function whatFollows({ yields }: Claim): string {
	if (yields.length === 0) return '';
	const labels = listed(yields.map(({ id }) => id));
	return `What fell off it, ${labels}, is not counted on the rack either. `;
}

function whatIsRight({ cut, takes }: Claim): string {
	if (!cut) return 'Let the pinned sheet go, or count again where it is there after all.';
	const back = 'where it was not, take the booking back.';
	switch (takes.kind) {
		case 'owned':
			return `Where it was there after all, count again and type how many are on the rack; ${back}`;
		case 'roll':
			return `Where it was there after all, measure again and type what is left on the roll; ${back}`;
		case 'sundry':
			return `Where it was there after all, count again and type how many are on the rack; ${back}`;
		default:
			return `Where it was there after all, count again and type the offcut on the rack; ${back}`;
	}
}

/** By the clock of whoever booked, told in the same words everywhere. */
const dayOf = (at: number): string => {
	const time = new Date(at);
	return Number.isNaN(time.getTime()) ? 'at no known time' : time.toISOString().slice(0, 10);
};

function listed(names: readonly string[]): string {
	return names.length < 2
		? names.join('')
		: `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
