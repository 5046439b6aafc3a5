import { defineConfig } from '@playwright/test';

const port = 4317;
const chromium = process.env['CHROMIUM'];
// Chromium's sandbox refuses to run under root.
const root = process.getuid?.() === 0;
/**
 * Parts of the browser's own window, which nobody sees here, are left out: two pages of its address
 * line alone take as long as our own page in every test. This list stands in place of the test
 * runner's, so what of that matters here is in it too.
 */
const UNSEEN = [
	...['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup', 'WebUIOmniboxFullPopup', 'AimEnabled'],
	...['PaintHolding', 'HttpsUpgrades', 'HttpsFirstBalancedModeAutoEnable'],
	...['AvoidUnnecessaryBeforeUnloadCheckSync', 'DestroyProfileOnBrowserClose'],
	...['OptimizationHints', 'NetworkTimeServiceQuerying', 'PreconnectToSearch'],
	...['LensOverlay', 'MediaRouter', 'ThirdPartyStoragePartitioning'],
];

const ARGS = [`--disable-features=${UNSEEN.join()}`, ...(root ? ['--no-sandbox'] : [])];
/** Draws solids without a graphics card; every other page is slower with it. */
const UNCARDED = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
const launched = (args: readonly string[]) => ({
	launchOptions: { ...(chromium ? { executablePath: chromium } : {}), args: [...args] },
});
const SOLIDS = '**/solid.test.ts';
/** What takes minutes is tried before a release only. */
const LONG = process.env['DEPTH'] === 'deep';

export default defineConfig({
	testDir: 'tests/browser',
	testMatch: '**/*.test.ts',
	outputDir: 'test-results',
	// Two browsers on two busy cores: a plan of a second may take ten. A test that hangs still
	// ends.
	timeout: 120_000,
	expect: { timeout: 30_000 },
	workers: 2,
	fullyParallel: true,
	forbidOnly: true,
	use: {
		baseURL: `http://localhost:${port}/`,
		// Every test comes as a new visitor; keeping the whole app for later is work only one of
		// them looks at.
		serviceWorkers: 'block',
	},
	projects: [
		{ name: 'pages', testIgnore: SOLIDS, use: launched(ARGS) },
		...(LONG ? [{ name: 'long', testMatch: '**/*.long.ts', use: launched(ARGS) }] : []),
		{ name: 'solids', testMatch: SOLIDS, use: launched([...ARGS, ...UNCARDED]) },
	],
	webServer: {
		command: 'node src/setup/start.js',
		url: `http://localhost:${port}/`,
		env: { PORT: String(port), PORT_STRICT: '1' },
		timeout: 180_000,
		reuseExistingServer: false,
	},
});
