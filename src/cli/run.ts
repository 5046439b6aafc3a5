import { nestCommand } from './nest';
import { checkCommand, planCommand } from './plan';
import { shopCommand } from './shop';
import { HELP, Usage } from './usage';

const COMMANDS: Readonly<Record<string, (args: readonly string[]) => Promise<number>>> = {
	plan: planCommand,
	nest: nestCommand,
	check: checkCommand,
	shop: shopCommand,
};

/**
 * Runs one command and returns its exit code: 0 done, 1 problems, 2 wrong usage or unreadable file,
 * 3 a fault of the planner.
 */
export async function run([name, ...args]: readonly string[]): Promise<number> {
	if (name === '--help' || name === '-h' || name === 'help') {
		process.stdout.write(HELP);
		return 0;
	}
	try {
		const command =
			name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
		if (!command)
			throw new Usage(
				name === undefined ? 'No command is given.' : `There is no command "${name}".`,
			);
		return await command(args);
	} catch (error) {
		if (error instanceof Usage) {
			process.stderr.write(`${error.message}\nSee kerf-and-nap --help.\n`);
			return 2;
		}
		process.stderr.write(`The planner has a fault of its own: ${String(error)}\n`);
		if (error instanceof Error) process.stderr.write(`${error.stack}\n`);
		return 3;
	}
}
