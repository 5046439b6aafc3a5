import { offer } from './offer';
import { shownPages } from '../lib/print';
import type { Printer } from '../lib/ui/planning';
import { outputFiles } from './output-files';

const printer: Printer = { outputFiles, shownPages };
offer(printer);
