import { offer } from './offer';
import type { Printer } from '../lib/ui/planning';
import { outputFiles } from './output-files';

const printer: Printer = { outputFiles };
offer(printer);
