import type { ChartFault } from './chart';
import type { ChartFaultCode } from './fault-codes';
import { MAX_FAULTS } from './limits';
import type { ValueFault } from './read-values';

/** A piece of the text: its line and column, both from 1, and what stands there. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/** Collects every fault of one reading, in the order they are found. */
export class FaultList {
  readonly #faults: ChartFault[] = [];

  /** Adds a fault at a place. */
  add(code: ChartFaultCode, place: Place, expected: string, nearest: string | null = null): void {
    if (this.#faults.length <= MAX_FAULTS)
      this.#faults.push({ code, line: place.line, column: place.column, text: place.text, expected, nearest });
  }

  /** Adds what a value reader found, at the place of the value. */
  addAll(faults: readonly ValueFault[], place: Place): void {
    for (const fault of faults) this.add(fault.code, place, fault.expected, fault.nearest);
  }

  get empty(): boolean {
    return this.#faults.length === 0;
  }

  /** True once no further fault will be listed. */
  get full(): boolean {
    return this.#faults.length > MAX_FAULTS;
  }

  /** All faults in the order of the text; beyond the most that are listed, a last one says so. */
  sorted(): ChartFault[] {
    const sorted = [...this.#faults].sort((a, b) => a.line - b.line || a.column - b.column);
    if (sorted.length <= MAX_FAULTS) return sorted;
    const last = sorted[MAX_FAULTS] as ChartFault;
    return [
      ...sorted.slice(0, MAX_FAULTS),
      { ...last, code: 'too many faults', expected: `chart text: more than ${MAX_FAULTS} faults, the rest are not listed`, nearest: null },
    ];
  }
}
