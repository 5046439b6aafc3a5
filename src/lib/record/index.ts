export { recordOf, recordSchemaText } from './record';
