/**
 * `npm run bench`: prints one JSON object. Every figure stands under its name; `limits` says beside it what limits it, how near
 * it comes (`share`), and whether the limit is a floor of the machine or a budget of eye and ear (measure.ts). Medians of many runs after
 * warm-up, what is compared measured in turns. Timed, so no part of `npm test`.
 *
 * `-- --only part[,part]` measures some parts, `-- --engine-only` those that need no browser. The others need dist/ (`npm run build`) or the
 * build that BROWSER_TEST_DIST names.
 */
import { cpus, totalmem } from 'node:os';
import type { Figure, Results } from './measure';

interface Part {
  readonly name: string;
  readonly browser?: true;
  readonly measure: () => Promise<Results>;
}

const PARTS: readonly Part[] = [
  { name: 'arrange', measure: async () => (await import('./arrange')).measureArrange() },
  { name: 'chart', measure: async () => (await import('./chart')).measureChart() },
  { name: 'search', measure: async () => (await import('./search')).measureSearch() },
  { name: 'chords', measure: async () => (await import('./chords')).measureChords() },
  { name: 'files', measure: async () => (await import('./files')).measureFiles() },
  { name: 'pdf', measure: async () => (await import('./pdf')).measurePdf() },
  { name: 'wav', measure: async () => (await import('./wav')).measureWav() },
  { name: 'practice', measure: async () => (await import('./practice')).measurePractice() },
  { name: 'pack', measure: async () => ({ pack: await (await import('./pack')).measurePack() }) },
  { name: 'face', browser: true, measure: async () => (await import('./face')).measureFace() },
  { name: 'listen', browser: true, measure: async () => (await import('./listen')).measureListen() },
  { name: 'visit', browser: true, measure: async () => (await import('./visit')).measureVisit() },
  { name: 'first-sound', browser: true, measure: async () => (await import('./first-sound')).measureFirstSound() },
];

/** Four significant digits. */
const short = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(4)) : value);
const isFigure = (value: Results[string]): value is Figure => typeof value === 'object' && value !== null && 'is' in value;
const plain = (value: Exclude<Results[string], Figure>) =>
  typeof value === 'number'
    ? short(value)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(Object.entries(value).map(([key, number]) => [key, short(number)]))
      : value;

function asked(): readonly Part[] {
  const args = process.argv.slice(2);
  const only = args.includes('--only') ? (args[args.indexOf('--only') + 1] ?? '').split(',') : null;
  const unknown = only?.filter((name) => !PARTS.some((part) => part.name === name)) ?? [];
  if (unknown.length > 0) {
    process.stderr.write(`no part "${unknown.join(', ')}": there are ${PARTS.map(({ name }) => name).join(', ')}\n`);
    process.exit(2);
  }
  return PARTS.filter(({ name, browser }) => (only ? only.includes(name) : !(browser && args.includes('--engine-only'))));
}

const figures: Record<string, unknown> = {};
const limits: Record<string, unknown> = {};
for (const part of asked()) {
  process.stderr.write(`${part.name} …\n`);
  for (const [key, result] of Object.entries(await part.measure())) {
    if (!isFigure(result)) {
      figures[key] = plain(result);
      continue;
    }
    const { value, limit, kind, is } = result;
    figures[key] = short(value);
    limits[key] = { kind, limit: short(limit), share: short(kind === 'floor' ? limit / value : value / limit), is };
  }
}
const machine = {
  node: process.version,
  cpu: cpus()[0]?.model ?? 'unknown',
  cores: cpus().length,
  memoryGigabytes: Math.round(totalmem() / 1e9),
  date: new Date().toISOString().slice(0, 10),
};
console.log(JSON.stringify({ ...figures, limits, machine }, null, 2));
