/** Stands in for packages that the PDF library asks for and we never call (see vite.config.ts). */
export default {};
