import type { JobFile } from '../../job';
import type { Booking } from '../../layout';
import type { OrderLine } from '../types';

/** So much of a sundry as was used and bought for a job, in packs. */
export interface SundryUse {
	readonly id: string;
	readonly name: string;
	readonly packs: number;
	readonly bought: number;
	/** As the plan counts it, not rounded. */
	readonly counted: number;
}

/** What the plan counts of each sundry, for a person to put right: its packs and shares of them. */
export function countedUses(lines: readonly OrderLine[]): SundryUse[] {
	return lines
		.filter((line) => line.group === 'sundries' && line.id !== '')
		.map((line) => ({
			...{ id: line.id, name: line.what, bought: line.buy },
			packs: Math.round((1000 * line.need.number) / line.pack) / 1000,
			counted: line.need.number / line.pack,
		}));
}

/**
 * What booking sundries as used comes to: what was used goes off the rack, what was bought and not
 * used joins it. Null for nothing.
 */
export function sundryBooking(file: JobFile, uses: readonly SundryUse[]): Booking | null {
	if (uses.length === 0) return null;
	const takings = uses
		.filter(({ packs, bought }) => packs !== bought)
		.map(({ id, packs, bought }) => ({
			takes: { kind: 'sundry', id, amount: packs - bought } as const,
			yields: [],
		}));
	const used = uses.map(({ id, ...use }) => ({ sundry: id, ...use }));
	return { takings, remnants: [], file: { ...file, used: [...(file.used ?? []), ...used] } };
}
