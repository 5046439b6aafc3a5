/**
 * Does tasks in their order, so many at a time. One that needs another stands after it in the list
 * and waits for its end.
 * @template {{ readonly name: string, readonly after?: string }} T
 * @param {readonly T[]} tasks
 * @param {number} width how many at a time
 * @param {(task: T) => Promise<void>} perform
 */
export async function sideBySide(tasks, width, perform) {
	const left = [...tasks];
	/** @type {Map<string, Promise<void>>} */
	const begun = new Map();
	/** @param {T} task */
	const begin = async (task) => {
		if (task.after !== undefined) await begun.get(task.after);
		await perform(task);
	};
	const lane = async () => {
		for (let task = left.shift(); task; task = left.shift()) {
			begun.set(task.name, begin(task));
			await begun.get(task.name);
		}
	};
	await Promise.all(Array.from({ length: width }, lane));
}
