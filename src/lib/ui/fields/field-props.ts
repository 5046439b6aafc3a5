import type { Path } from '../../job';

/** What every field is told. */
export interface FieldProps {
	path: Path;
	label: string;
	help?: string;
	/** The label is read out but not seen: the column of a table names it already. */
	quiet?: boolean;
	/** What holds while the file says nothing. */
	fallback?: unknown;
}

/** What every field is told that is typed in. */
export interface TypedProps extends FieldProps {
	/** What the file holds when the field is emptied. */
	empty?: null | undefined | '';
}
