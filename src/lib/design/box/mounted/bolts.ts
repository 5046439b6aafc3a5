import { mm, nth } from '../../../measure';
import { type Board, boardObstacle, faceOf, type Hole, through } from '../board';
import { add3, raised, scale3 } from '../solid';
import type { ProblemLog } from '../../problem-log';
import { cutFor, type Framed, type Seated } from './framed';
import { amiss, onCircle, patternHoles } from './pattern';

type Bolted = Pick<Seated<Framed>, 'list' | 'driver' | 'index' | 'name' | 'place'>;

/**
 * Drills the bolt circle of a driver through its board and every layer on it; `cut` is its cut-out.
 * Holes that cannot be drilled are told and left out.
 */
export function drillBolts(one: Bolted, cut: Hole, log: ProblemLog): void {
	const { driver, place } = one;
	const { boltCircle, bolts } = driver;
	if (!boltCircle) return;
	const holes = boltHoles(one);
	const wrong = bolts === 0 ? 'none' : amiss(holes, faceOf(place.wall), cut.outline);
	const past = boltCircle.diameter + boltCircle.hole > driver.frame;
	if (wrong !== null || past) {
		say(one, past ? 'past the frame' : (wrong ?? 'none'), cut, log);
		return;
	}
	place.wall.holes.push(...holes);
	for (const layer of place.layers)
		layer.holes.push(...boltHoles(one, (p) => through(p, place.wall.frame, layer.frame)));
}

function boltHoles(
	{ driver, name, place }: Bolted,
	on: (p: Hole['centre']) => Hole['centre'] = (p) => p,
): Hole[] {
	const { boltCircle, bolts } = driver;
	if (!boltCircle) return [];
	const { diameter, angle, hole } = boltCircle;
	const middle = on(place.at);
	const pattern = { kind: 'circle', count: bolts, diameter, angle, middle } as const;
	const at = onCircle(middle, diameter, bolts, angle);
	return patternHoles(at, hole, { of: 'bolt', name: boltsOf(name), pattern });
}

/** Common practice, no source: the flange of a T-nut reaches this far from its middle. */
const FLANGE = mm(10);

/** Says which boards stand where the T-nuts of a driver have to go. */
export function sayBehindBolts(one: Bolted, boards: readonly Board[], log: ProblemLog): void {
	const { list, index, name, place } = one;
	const { wall, inward, stack } = place;
	const behind = wall.holes
		.filter((h) => h.of === 'bolt' && h.name === boltsOf(name))
		.map((h) => add3(raised(h.centre, wall.frame), scale3(inward, stack + 4)));
	const met = boards.filter((b) => {
		const obstacle = boardObstacle(b);
		return behind.some((p) => obstacle.has(p, FLANGE));
	});
	if (met.length === 0) return;
	log.check(
		[list, index, 'boltCircle'],
		`Behind the bolts of ${name} stands ${[...new Set(met.map((b) => b.name))].join(', ')}: a T-nut needs ${log.say(FLANGE)} round its hole.`,
		'Turn the bolt circle, or move one of them.',
	);
}

const boltsOf = (name: string): string => `bolts of ${name}`;

type Wrong = NonNullable<ReturnType<typeof amiss>> | 'none' | 'past the frame';

function say(
	{ list, driver, index, name }: Bolted,
	wrong: Wrong,
	cut: Hole,
	log: ProblemLog,
): void {
	const { boltCircle, bolts, frame } = driver;
	if (!boltCircle) return;
	const { diameter, hole } = boltCircle;
	const tell = (of: 'diameter' | 'hole', what: string, fix: string): void =>
		log.check([list, index, 'boltCircle', of], `${what} No bolt is drilled.`, fix);
	const circle = `The bolt circle of ${name} (${log.say(diameter)}, holes of ${log.say(hole)})`;
	const least = Math.max(...cut.size, nth(cut.size, 0)) + hole;
	const between = `Give a circle from ${log.range(least, frame - hole)}, as on the mounting sheet.`;
	if (wrong === 'none')
		log.check(
			[list, index, 'bolts'],
			`${name} has a bolt circle and no bolts.`,
			'Give their number, or leave the bolt circle empty.',
		);
	if (wrong === 'past the frame')
		tell('diameter', `${circle} reaches past its frame of ${log.say(frame)}.`, between);
	if (wrong === 'in the opening') tell('diameter', `${circle} runs into its cut-out.`, between);
	if (wrong === 'off the board')
		tell(
			'diameter',
			`${circle} does not lie within its board.`,
			`Move the ${cutFor({ list })} inwards.`,
		);
	if (wrong === 'in each other')
		tell(
			'hole',
			`${bolts} holes of ${log.say(hole)} on the bolt circle of ${name} run into each other.`,
			'Give fewer bolts or smaller holes.',
		);
}
