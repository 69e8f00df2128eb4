/**
 * Fits the direction score to expert-labelled rhythms and prints the table for src/music/clave/direction-weights.ts.
 *
 *   npx tsx tests/scripts/fit-direction.ts DATA [--write]
 *
 * DATA is a tab-separated file: 16 steps (`x` and `.`, spaces ignored), then `2-3`, `3-2`, `neutral` or `undecided`; `#` begins a comment.
 * The data are M. Vurkaç, Firm-Teacher Clave-Direction Classification, UCI Machine Learning Repository, data set 324, 2015, CC BY 4.0.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { atThreshold, crossValidate, directed, fitWeights, readData } from './direction-fit';

const TABLE = new URL('../../src/music/clave/direction-weights.ts', import.meta.url);

/** Puts the weights at full precision into the application's table, four to a line; everything else in the file stays. */
function replaceTables(text: string, weights: readonly number[]): string {
  const table = (name: string, values: readonly number[]): string => {
    const lines: string[] = [];
    for (let from = 0; from < values.length; from += 4) lines.push(`  ${values.slice(from, from + 4).join(', ')},`);
    return `export const ${name}: readonly number[] = [\n${lines.join('\n')}\n];`;
  };
  const put = (source: string, name: string, values: readonly number[]): string =>
    source.replace(new RegExp(`export const ${name}: readonly number\\[\\] = \\[[^\\]]*\\];`), table(name, values));
  return put(put(text, 'STEP_WEIGHTS', weights.slice(0, 8)), 'PAIR_WEIGHTS', weights.slice(8));
}

function main(): void {
  const path = process.argv[2];
  if (!path) {
    console.error('usage: tsx tests/scripts/fit-direction.ts DATA [--write]');
    process.exit(2);
  }
  const rows = readData(path);
  const steps = crossValidate(rows, 1, 8, 1);
  console.log(`${rows.length} rhythms, ${rows.filter(directed).length} with a direction`);
  console.log(`steps alone: sign right ${(100 * steps.signRight).toFixed(2)} %, log loss ${steps.loss.toFixed(4)}`);
  const trials = [0.25, 0.5, 1, 2, 4, 8, 16].map((ridge) => ({ ridge, result: crossValidate(rows, ridge, 64, 1) }));
  for (const { ridge, result } of trials) {
    console.log(
      `ridge ${ridge}: sign right ${(100 * result.signRight).toFixed(2)} %, log loss ${result.loss.toFixed(4)} ± ${result.lossError.toFixed(4)}`,
    );
  }
  const best = trials.reduce((a, b) => (b.result.loss < a.result.loss ? b : a));
  console.log(`chosen ridge ${best.ridge}`);
  for (const threshold of [0.5, 1, 1.5, 2, 2.5, 3]) {
    const named = Object.entries(atThreshold(best.result.scored, threshold)).map(([label, share]) => `${label} ${share.toFixed(2)} %`);
    console.log(`threshold ${threshold}: ${named.join(', ')}`);
  }
  const weights = fitWeights(rows.filter(directed), best.ridge, 64);
  console.log(
    `steps ${weights
      .slice(0, 8)
      .map((weight) => weight.toFixed(2))
      .join(' ')}`,
  );
  if (process.argv.includes('--write')) writeFileSync(TABLE, replaceTables(readFileSync(TABLE, 'utf8'), weights));
}

main();
