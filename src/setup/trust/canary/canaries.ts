/*
 * Texts that do something where somebody takes them for more than text. Each sets the same flag,
 * `ran__`, or opens an address of its own.
 */

export const CANARIES: readonly string[] = [
	'<script>ran__=1</script>',
	'"><img src=x onerror="ran__=1">',
	"' onmouseover='ran__=1' x='",
	'</text></svg><svg onload="ran__=1">',
	'javascript:ran__=1',
	'{{ran__=1}}${ran__=1}{@html ran__=1}',
	'&lt;script&gt;ran__=1&#x3c;/script&#x3e;&ran;',
	'=HYPERLINK("http://ran.example","ran__")',
	'@SUM(1+1)*cmd|ran__',
	')]>> /JS (ran__=1) /S /JavaScript endobj',
];

/** Fields that hold words of a person's own; another text elsewhere makes another job, or none. */
const WORDS = /^(name|number|revision|customer|vehicle|notes|code|picture)$/;

/**
 * The job with a canary before every text that a person words freely: always the same one, or the
 * next one each time.
 */
export function withCanary(job: unknown, canary: string | (() => string)): unknown {
	if (Array.isArray(job)) return job.map((entry) => withCanary(entry, canary));
	if (typeof job !== 'object' || job === null) return job;
	const next = (): string => (typeof canary === 'string' ? canary : canary());
	return Object.fromEntries(
		Object.entries(job).map(([key, value]) => [
			key,
			typeof value === 'string' && WORDS.test(key) ? next() + value : withCanary(value, canary),
		]),
	);
}
