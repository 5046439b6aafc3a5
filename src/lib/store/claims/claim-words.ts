import { type Claim, unitOf } from './claim';
import type { NetRack } from './net-rack';

/**
 * In words, each booking that has not got what it claims: what and whose it is, who has it instead,
 * what follows, and what would be right.
 */
export function lostWords({ verdict, onUnit }: NetRack): string[] {
	return verdict.lost.map((claim) => {
		const holders = (onUnit.get(unitOf(claim.takes)) ?? []).filter((c) => verdict.won.has(c));
		return `${capital(unitWords(claim))}, booked by ${claim.by} (${dayOf(claim.at)}), is not on the rack for it: ${whyNot(holders)}. ${whatFollows(claim)}${whatIsRight(claim)}`;
	});
}

/** In words, the bookings that a step taken back has left with nothing. */
export function fallenWords(fallen: readonly Claim[]): string {
	return fallen
		.map((claim) => `${unitWords(claim)} has been booked by ${claim.by} since: that booking stays`)
		.map((words) => `${capital(words)} and is told on the rack`)
		.join('. ');
}

const unitWords = ({ takes: { kind, id } }: Claim): string =>
	kind === 'owned' ? `a sheet “${id}”` : `offcut “${id}”`;

function whyNot(holders: readonly Claim[]): string {
	if (holders.length === 0) return 'there is none';
	return `${listed([...new Set(holders.map(({ by }) => by))])} booked it`;
}

function whatFollows({ yields }: Claim): string {
	if (yields.length === 0) return '';
	const labels = listed(yields.map(({ id }) => id));
	return `What fell off it, ${labels}, is not counted on the rack either. `;
}

function whatIsRight({ takes }: Claim): string {
	const what = takes.kind === 'owned' ? 'how many are on the rack' : 'the offcut on the rack';
	return `Where it was there after all, count again and type ${what}; where it was not, take the booking back.`;
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
