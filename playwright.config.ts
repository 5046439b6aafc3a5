import { defineConfig } from '@playwright/test';

const port = 4317;
const chromium = process.env['CHROMIUM'];
// Chromium's sandbox refuses to run under root.
const root = process.getuid?.() === 0;

export default defineConfig({
	testDir: 'tests/browser',
	testMatch: '**/*.test.ts',
	outputDir: 'test-results',
	// Two browsers on two busy cores: a plan of a second may take ten. A test that hangs still ends.
	timeout: 120_000,
	expect: { timeout: 30_000 },
	workers: 2,
	fullyParallel: true,
	forbidOnly: true,
	use: {
		baseURL: `http://localhost:${port}/`,
		launchOptions: {
			...(chromium ? { executablePath: chromium } : {}),
			args: root ? ['--no-sandbox'] : [],
		},
	},
	webServer: {
		command: 'node src/setup/start.js',
		url: `http://localhost:${port}/`,
		env: { PORT: String(port), PORT_STRICT: '1' },
		timeout: 180_000,
		reuseExistingServer: false,
	},
});
