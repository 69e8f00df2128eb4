/** What the output is good for: `wireless` and `unstable` outputs are heard so late, or so unevenly late, that nothing is said about timing. */
export type OutputTrust = 'steady' | 'wireless' | 'unstable';

/**
 * An output that admits to more than this is wireless in all likelihood (150 to 300 ms are reported for Bluetooth, cables and loudspeakers
 * stay below 50); one that wanders by more than the second value cannot be calibrated. Design values from developers' reports.
 */
const WIRELESS_MS = 80;
const WANDERS_MS = 15;
/** Readings that a device takes to settle after it was opened. */
const SETTLING = 4;
const KEPT = 20;

/** Watches what the output admits to. */
export interface OutputWatch {
  /** Takes a reading in milliseconds, or null where the browser does not tell. */
  read(latencyMs: number | null): OutputTrust;
}

/** A watch that has seen nothing. */
export function createOutputWatch(): OutputWatch {
  let seen = 0;
  const kept: number[] = [];
  return {
    read(latencyMs) {
      if (latencyMs === null || latencyMs <= 0) return 'steady';
      seen += 1;
      if (seen > SETTLING) kept.push(latencyMs);
      if (kept.length > KEPT) kept.shift();
      if (kept.length === 0) return 'steady';
      const sorted = [...kept].sort((a, b) => a - b);
      const middle = sorted[sorted.length >> 1] ?? 0;
      if (middle > WIRELESS_MS) return 'wireless';
      // One odd reading is a hiccup: the second lowest and the second highest decide.
      const low = sorted[Math.min(1, sorted.length - 1)] ?? 0;
      const high = sorted[Math.max(0, sorted.length - 2)] ?? 0;
      return high - low > WANDERS_MS ? 'unstable' : 'steady';
    },
  };
}
