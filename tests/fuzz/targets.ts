import { ASSIGNMENTS } from './assignment-target';
import { MIDI_INPUT, STORED_STATE } from './device-targets';
import { BACKUPS, JOURNAL, LINKS, SCORES } from './exchange-targets';
import type { AnyTarget } from './fuzz-target';

/** Everything that reads what others wrote, but for chart text, which `fuzzCharts` reads. */
export const TARGETS: readonly AnyTarget[] = [LINKS, ASSIGNMENTS, BACKUPS, JOURNAL, SCORES, MIDI_INPUT, STORED_STATE];
