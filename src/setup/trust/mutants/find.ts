import ts from 'typescript';

/*
 * Small faults that a hand might make, found in the syntax of a file: each a stretch of its text
 * and what would stand there instead.
 */

export interface Mutant {
	/** Below the project folder. */
	readonly file: string;
	readonly start: number;
	readonly end: number;
	readonly kind: string;
	/** What stands there instead; null for a statement that is left out. */
	readonly text: string | null;
	/** Works once: a constant of the file, or in a file that remembers what it has made. */
	readonly once: boolean;
}

export interface Numbered extends Mutant {
	readonly id: number;
}

const SWAPS: ReadonlyMap<ts.SyntaxKind, readonly (readonly [string, string])[]> = new Map([
	[
		ts.SyntaxKind.LessThanToken,
		[
			['<=', 'edge'],
			['>', 'comparison'],
		],
	],
	[
		ts.SyntaxKind.LessThanEqualsToken,
		[
			['<', 'edge'],
			['>', 'comparison'],
		],
	],
	[
		ts.SyntaxKind.GreaterThanToken,
		[
			['>=', 'edge'],
			['<', 'comparison'],
		],
	],
	[
		ts.SyntaxKind.GreaterThanEqualsToken,
		[
			['>', 'edge'],
			['<', 'comparison'],
		],
	],
	[ts.SyntaxKind.EqualsEqualsEqualsToken, [['!==', 'comparison']]],
	[ts.SyntaxKind.ExclamationEqualsEqualsToken, [['===', 'comparison']]],
	[ts.SyntaxKind.PlusToken, [['-', 'plus and minus']]],
	[ts.SyntaxKind.MinusToken, [['+', 'plus and minus']]],
	[ts.SyntaxKind.AsteriskToken, [['/', 'times and by']]],
	[ts.SyntaxKind.SlashToken, [['*', 'times and by']]],
	[ts.SyntaxKind.AmpersandAmpersandToken, [['||', 'and, or']]],
	[ts.SyntaxKind.BarBarToken, [['&&', 'and, or']]],
]);

const NAMES: ReadonlyMap<string, string> = new Map([
	['min', 'max'],
	['max', 'min'],
	['floor', 'ceil'],
	['ceil', 'floor'],
	['round', 'floor'],
	['some', 'every'],
	['every', 'some'],
]);

/** Every mutant of a file, in the order of its text. */
export function mutantsOf(file: string, text: string): Mutant[] {
	const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
	const found: Mutant[] = [];
	const remembers = /^(export )?const \w+ = new (Weak)?Map\b/m.test(text);
	const add = (node: ts.Node, kind: string, instead: string | null): void => {
		const [start, end] = [node.getStart(), node.getEnd()];
		found.push({ file, start, end, kind, text: instead, once: remembers || !isCalled(node) });
	};
	const visit = (node: ts.Node): void => {
		if (isNoWork(node)) return;
		mutate(node, add);
		ts.forEachChild(node, visit);
	};
	visit(source);
	return found.sort((a, b) => a.start - b.start || b.end - a.end);
}

/** Types vanish; what is said when it is our own fault is no work either. */
function isNoWork(node: ts.Node): boolean {
	return (
		ts.isTypeNode(node) ||
		ts.isThrowStatement(node) ||
		ts.isImportDeclaration(node) ||
		ts.isExportDeclaration(node) ||
		ts.isInterfaceDeclaration(node) ||
		ts.isTypeAliasDeclaration(node)
	);
}

/** Within a function, or a field that is set when something is made: done again at every call. */
function isCalled(node: ts.Node): boolean {
	for (let at: ts.Node | undefined = node.parent; at; at = at.parent)
		if (ts.isFunctionLike(at) || ts.isPropertyDeclaration(at)) return true;
	return false;
}

type Add = (node: ts.Node, kind: string, instead: string | null) => void;

function mutate(node: ts.Node, add: Add): void {
	if (ts.isBinaryExpression(node)) return ofOperator(node, add);
	if (ts.isNumericLiteral(node)) return ofNumber(node, add);
	if (ts.isCallExpression(node)) return ofCall(node, add);
	if (ts.isIfStatement(node))
		return add(node.expression, 'condition', `!(${node.expression.getText()})`);
	if (ts.isConditionalExpression(node))
		return add(node.condition, 'condition', `!(${node.condition.getText()})`);
	if (node.kind === ts.SyntaxKind.TrueKeyword) return add(node, 'true and false', 'false');
	if (node.kind === ts.SyntaxKind.FalseKeyword) return add(node, 'true and false', 'true');
	if (ts.isExpressionStatement(node)) add(node, 'statement left out', null);
}

function ofOperator(node: ts.BinaryExpression, add: Add): void {
	const { left, operatorToken, right } = node;
	if (operatorToken.kind === ts.SyntaxKind.PlusToken && isWords(node)) return;
	for (const [sign, kind] of SWAPS.get(operatorToken.kind) ?? [])
		add(node, kind, `${left.getText()} ${sign} ${right.getText()}`);
}

/** Texts put together, as far as the syntax alone shows it. */
function isWords(node: ts.Node): boolean {
	if (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) return true;
	return ts.isBinaryExpression(node) && (isWords(node.left) || isWords(node.right));
}

function ofNumber(node: ts.NumericLiteral, add: Add): void {
	if (ts.isPropertyAssignment(node.parent) && node.parent.name === node) return;
	const value = Number(node.text.replaceAll('_', ''));
	add(node, 'constant', value === 1 ? '2' : value === 0 ? '1' : String(value * 1.25 + 1));
}

function ofCall(node: ts.CallExpression, add: Add): void {
	const { expression: callee, arguments: given } = node;
	// Parentheses would end the short cut of a chain that goes on after it.
	if (ts.isOptionalChain(node)) return;
	const args = given.map((one) => one.getText());
	if (ts.isPropertyAccessExpression(callee)) {
		const [on, name] = [callee.expression.getText(), callee.name.text];
		const other = NAMES.get(name);
		if (other) add(node, 'swapped name', `${on}.${other}(${args.join(', ')})`);
		if (name === 'filter') add(node, 'filter left out', on);
	}
	if (given.length >= 2 && ts.isIdentifier(callee))
		add(node, 'argument left out', `${callee.text}(${args.slice(0, -1).join(', ')})`);
}
