/**
 * The large run behind the engine's figures: twelve keys, both directions, son and rumba, six levels, over the published recipes and
 * random progressions; then figures drawn from everything that can be combined. `npm run sweep -- [seed] [progressions]`; prints one JSON object and exits 1 if anything is wrong.
 */
import { arrange } from '../../src/music/score';
import { bassLeaps, CHECKS, checkStretch, guideMoves } from '../engine/checks';
import { combination, reachOf } from '../engine/combinations';
import { chartOf, RECIPES, randomProgression } from '../engine/progressions';

const seed = Number(process.argv[2] ?? 1);
const count = Number(process.argv[3] ?? 200);
const charts = [
  ...RECIPES.map(({ name, key, bars }) => `title: ${name}\nkey: ${key}\n${bars}`),
  ...Array.from({ length: Math.max(0, count - RECIPES.length) }, (_, index) => randomProgression(seed * 100_000 + index)),
].slice(0, count);

const started = performance.now();
const faults: string[] = [];
const moves: number[] = [];
const leaps: number[] = [];
let scores = 0;
let crossed = 0;
for (const text of charts) {
  const chart = chartOf(text);
  for (let transpose = 0; transpose < 12; transpose++) {
    for (const direction of ['2-3', '3-2'] as const) {
      for (const kind of ['son', 'rumba'] as const) {
        for (const level of [1, 2, 3, 4, 5, 6] as const) {
          const score = arrange(chart, { transpose, direction, kind, level });
          scores++;
          if (score.alignment.verdict === 'crossed') crossed++;
          for (const check of CHECKS) faults.push(...check(score));
          if (level >= 2 && level <= 5) for (const move of guideMoves(score)) moves.push(move);
          for (const leap of bassLeaps(score)) leaps.push(leap);
        }
      }
    }
  }
}
const share = (values: readonly number[], within: number): number => values.filter((value) => value <= within).length / values.length;
const largest = (values: readonly number[]): number => values.reduce((most, value) => Math.max(most, value), 0);
const byFigure = faults.reduce<Record<string, number>>((sums, fault) => {
  const id = fault.split(' ')[0] ?? '';
  sums[id] = (sums[id] ?? 0) + 1;
  return sums;
}, {});
const saying = (words: string): number => faults.filter((fault) => fault.includes(words)).length;

// Beside the full grid: styles, devices, hands, stretches and variants, drawn at random.
const COMBINATIONS = 20 * count;
let stretched = 0;
let crossedThere = 0;
for (let index = 0; index < COMBINATIONS; index++) {
  const { chart, options, name } = combination(seed * 1_000_000 + index);
  const score = arrange(chart, options);
  const reach = checkStretch(reachOf(options))(score);
  stretched += reach.length;
  if (score.alignment.verdict === 'crossed') crossedThere++;
  faults.push(...reach.map((fault) => `${fault} :: ${name}`));
}

console.log(
  JSON.stringify(
    {
      seed,
      progressions: charts.length,
      scores,
      seconds: Math.round((performance.now() - started) / 1000),
      crossed,
      faults: byFigure,
      // The same by what a player would say.
      avoidNotes: saying('avoid note'),
      stretchesOverTheSetting: saying('stretch over'),
      barsWithoutTheAnticipation: saying('not taken early'),
      combinations: { figures: COMBINATIONS, stretchesOverTheSetting: stretched, crossed: crossedThere },
      examples: faults.slice(0, 10),
      octaveLine: { largest: largest(moves), withinTwo: share(moves, 2), mean: moves.reduce((sum, move) => sum + move, 0) / moves.length },
      bass: { largest: largest(leaps), withinFifth: share(leaps, 7) },
    },
    null,
    1,
  ),
);
process.exit(faults.length > 0 || crossed + crossedThere > 0 ? 1 : 0);
