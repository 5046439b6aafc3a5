import type { Box, Radiator } from '../../../job';
import { nth } from '../../../measure';
import type { ProblemLog } from '../../problem-log';
import type { Seated } from '../mounted';
import { APART, STIFFNESS, two } from './data';
import { passiveCone, resonanceOn, tunedTogether, unlike } from './radiator';

/** Says which data sheets of radiators say too little, or contradict themselves. */
export function sayRadiatorData(box: Box, log: ProblemLog): void {
	box.radiators.forEach((radiator, i) => {
		const path = ['radiators', i, 'data'];
		const { data, goal } = radiator;
		const cone = passiveCone(radiator);
		if (!cone) {
			log.check(
				path,
				'Too little is known of these radiators: no tuning and no response are worked out.',
				'Give two of resonance, moving mass and Vas (or compliance); mass and compliance go with the cone area.',
			);
			return;
		}
		for (const { what, fix } of contradictions(data)) log.check(path, what, fix);
		const asked = goal.by === 'tuning' || goal.grams > 0;
		if (cone.area === null && asked)
			log.check(
				[...path, 'sd'],
				goal.by === 'tuning'
					? 'Without the cone area the mass to be added cannot be said in grams.'
					: `Without the cone area the added ${goal.grams} g cannot be counted: the tuning is without them.`,
				'Give the cone area of one radiator.',
			);
	});
}

function contradictions({ fs, mms, cms, vas, sd }: Radiator['data']) {
	if (sd === undefined) return [];
	const per = STIFFNESS * (sd * 1e-4) ** 2;
	const fromVas = vas === undefined ? null : vas / per;
	const spring = cms ?? fromVas;
	const found: { what: string; fix: string }[] = [];
	if (cms !== undefined && fromVas !== null && Math.abs(fromVas / cms - 1) > APART)
		found.push({
			what: `Vas and the cone area make a compliance of ${two(fromVas)} mm/N, not ${cms}.`,
			fix: 'Read Vas, compliance and cone area again; one is off, or in another unit.',
		});
	if (fs === undefined || mms === undefined || spring === null) return found;
	const own = resonanceOn((mms * 1e-3) / per, spring * 1e-3 * per);
	if (Math.abs(own / fs - 1) > APART)
		found.push({
			what: `A moving mass of ${mms} g on that suspension resonates at ${two(own)} Hz, not ${fs} Hz.`,
			fix: 'Read mass, suspension, cone area and resonance again; the mass is without any added.',
		});
	return found;
}

/** Says of the radiators of one chamber, m3, what they cannot do together. */
export function sayTuning(
	own: readonly Seated<Radiator>[],
	room: number,
	box: number,
	log: ProblemLog,
): void {
	if (own.length === 0) return;
	const first = nth(own, 0);
	if (unlike(own)) {
		const other = own.find((s) => unlike([first, s])) ?? first;
		log.check(
			['radiators', other.index, 'data'],
			`The passive radiators of chamber ${room + 1} differ in their data or in what is wanted of them: no tuning is worked out for them together.`,
			'Give them the same if they are alike, or take one kind.',
		);
		return;
	}
	const tuned = tunedTogether(own, box);
	const { goal } = first.driver;
	if (!tuned || goal.by !== 'tuning' || tuned.bare >= goal.hertz * (1 - 1e-9)) return;
	log.check(
		['radiators', first.index, 'goal'],
		`${goal.hertz} Hz cannot be had: even with no mass added ${first.name} is too heavy and tunes the chamber to ${two(tuned.bare)} Hz. It is planned without added mass.`,
		`Ask for ${Math.floor(tuned.bare * 10) / 10} Hz or less, or take a smaller chamber, more radiators or lighter ones.`,
	);
}
