/**
 * What came of reading a text a person typed: the value, or what is wrong with it and an example of
 * what is right.
 */
export type Reading<T> =
	| { readonly ok: true; readonly value: T }
	| { readonly ok: false; readonly what: string; readonly fix: string };

export type Unit = 'mm' | 'cm' | 'm' | 'in';

/**
 * How a person writes lengths: the unit meant when none is written, and the decimal sign (a
 * setting, never guessed).
 */
export interface Hand {
	readonly unit: Unit;
	readonly decimal: '.' | ',';
}
