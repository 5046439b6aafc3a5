import { expect, test } from 'vitest';
import { Fingers } from '../../../src/lib/ui/drawings/fingers';

const at = (pointerId: number, clientX: number, clientY: number) => ({
	pointerId,
	clientX,
	clientY,
});

test('one finger slides, and only while it is down', () => {
	const fingers = new Fingers();
	expect(fingers.move(at(1, 5, 5))).toBeNull();
	fingers.press(at(1, 10, 10));
	expect(fingers.move(at(1, 13, 14))).toEqual({
		kind: 'slide',
		from: at(1, 10, 10),
		to: at(1, 13, 14),
	});
	fingers.lift(at(1, 13, 14));
	expect(fingers.move(at(1, 20, 20))).toBeNull();
});

test('two fingers twice as far apart come twice as near, round the one that rests', () => {
	const fingers = new Fingers();
	fingers.press(at(1, 0, 0));
	fingers.press(at(2, 30, 40));
	expect(fingers.move(at(2, 60, 80))).toEqual({ kind: 'pinch', times: 2, round: at(1, 0, 0) });
	fingers.lift(at(1, 0, 0));
	expect(fingers.move(at(2, 61, 80))?.kind).toBe('slide');
});

test('fingers on one spot do not come infinitely near', () => {
	const fingers = new Fingers();
	fingers.press(at(1, 7, 7));
	fingers.press(at(2, 7, 7));
	expect(fingers.move(at(2, 7, 17))).toMatchObject({ kind: 'pinch', times: 10 });
});
