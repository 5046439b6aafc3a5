import { offer } from './offer';
import type { Printer } from '../lib/ui/planning';
import { paper } from './paper';

const printer: Printer = { paper };
offer(printer);
