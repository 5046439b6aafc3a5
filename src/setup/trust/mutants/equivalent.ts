/** Mutants that were looked at and change nothing that anybody could see, and why. */
export const EQUIVALENT: ReadonlyMap<string, string> = new Map([]);
