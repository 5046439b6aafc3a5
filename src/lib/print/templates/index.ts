export {
	blankTemplate,
	partTemplate,
	templateLeaves,
	templateLength,
	templateOf,
	templatesOf,
} from './pages';
