/**
 * Fitting the direction score and judging it on rhythms that the fit has not seen.
 *
 * Method: logistic regression without an intercept on the antisymmetric terms of direction-score.ts, ridge penalty, Newton steps.
 * Rhythms with a direction get the targets 1 (2-3) and 0 (3-2). A rhythm and its rotation by half a cycle carry the same information and
 * stay in one fold. The penalty with the lowest mean log loss over ten held-out folds is taken.
 */
import { readFileSync } from 'node:fs';
import { directionTerms } from '../../src/music/clave/direction-score';
import { rotate } from '../../src/music/clave/patterns';
import { readGrid } from '../../src/music/clave/read-grid';

/** A rhythm, its terms, and what experts heard it state. */
export interface Labelled {
  readonly grid: readonly boolean[];
  readonly terms: readonly number[];
  readonly label: string;
}

const FOLDS = 10;

/** Reads the labelled rhythms of a file. Throws on a line that is no rhythm of 16 steps. */
export function readData(path: string): readonly Labelled[] {
  const rows: Labelled[] = [];
  for (const line of readFileSync(path, 'utf8').split('\n')) {
    const [text, label] = line.split('\t');
    if (line.startsWith('#') || !text || !label) continue;
    const read = readGrid(text);
    if (!read.ok) throw new Error(`${text}: ${read.faults[0]?.expected}`);
    rows.push({ grid: read.value, terms: directionTerms(read.value), label: label.trim() });
  }
  return rows;
}

const key = (grid: readonly boolean[]): string => grid.map((cell) => (cell ? 'x' : '.')).join('');

/** A rhythm and its rotation get the same fold, by a fixed hash of whichever comes first in text order. */
function foldOf(grid: readonly boolean[], seed: number): number {
  const text = [key(grid), key(rotate(grid, 8))].sort()[0] ?? '';
  let hash = 2166136261 ^ seed;
  for (const char of text) hash = Math.imul(hash ^ char.charCodeAt(0), 16777619);
  hash ^= hash >>> 15;
  return (Math.imul(hash, 2246822519) >>> 8) % FOLDS;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
const sigmoid = (z: number): number => 1 / (1 + Math.exp(-z));

/** Newton's method on the penalised log loss; `size` terms are used (8 = steps alone). Steps are penalised ten times less than pairs. */
export function fitWeights(rows: readonly Labelled[], ridge: number, size: number): number[] {
  const penalty = Array.from({ length: size }, (_, index) => (index < 8 ? ridge / 10 : ridge));
  let weights = Array.from({ length: size }, () => 0);
  for (let round = 0; round < 30; round += 1) {
    const gradient = weights.map((weight, index) => -(penalty[index] ?? 0) * weight);
    const hessian = Array.from({ length: size }, (_, index) => {
      const row = new Array<number>(size).fill(0);
      row[index] = penalty[index] ?? 0;
      return row;
    });
    for (const { terms, label } of rows) {
      const p = sigmoid(dot(weights, terms));
      const error = (label === '2-3' ? 1 : 0) - p;
      const curve = p * (1 - p);
      const active = terms.slice(0, size).flatMap((term, index) => (term === 0 ? [] : [index]));
      for (const i of active) {
        gradient[i] = (gradient[i] ?? 0) + error * (terms[i] ?? 0);
        const row = hessian[i] as number[];
        for (const j of active) row[j] = (row[j] ?? 0) + curve * (terms[i] ?? 0) * (terms[j] ?? 0);
      }
    }
    const step = solve(hessian, gradient);
    weights = weights.map((weight, index) => weight + (step[index] ?? 0));
    if (Math.max(...step.map(Math.abs)) < 1e-10) break;
  }
  return weights;
}

/** Solves a symmetric positive definite system by Gaussian elimination with pivoting. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const size = rows.length;
  const cell = (r: number, c: number): number => (rows[r] as number[])[c] as number;
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < size; row += 1) if (Math.abs(cell(row, column)) > Math.abs(cell(pivot, column))) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot] as number[], rows[column] as number[]];
    for (let row = column + 1; row < size; row += 1) {
      const factor = cell(row, column) / cell(column, column);
      for (let c = column; c <= size; c += 1) (rows[row] as number[])[c] = cell(row, c) - factor * cell(column, c);
    }
  }
  const answer = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    let rest = cell(row, size);
    for (let c = row + 1; c < size; c += 1) rest -= cell(row, c) * (answer[c] as number);
    answer[row] = rest / cell(row, row);
  }
  return answer;
}

/** What ten folds gave: mean log loss with its standard error, the share of right signs, and every held-out score. */
export interface HeldOut {
  readonly loss: number;
  readonly lossError: number;
  readonly signRight: number;
  readonly scored: readonly { readonly label: string; readonly score: number }[];
}

/** Fits on nine tenths and scores the tenth left out, ten times. */
export function crossValidate(rows: readonly Labelled[], ridge: number, size: number, seed: number): HeldOut {
  const losses: number[] = [];
  const scored: { label: string; score: number }[] = [];
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const train = rows.filter((row) => foldOf(row.grid, seed) !== fold && directed(row));
    const weights = fitWeights(train, ridge, size);
    let loss = 0;
    let count = 0;
    for (const row of rows) {
      if (foldOf(row.grid, seed) !== fold) continue;
      const score = dot(weights, row.terms);
      scored.push({ label: row.label, score });
      if (directed(row)) {
        loss -= Math.log(Math.max(1e-12, sigmoid(row.label === '2-3' ? score : -score)));
        count += 1;
      }
    }
    losses.push(loss / count);
  }
  const mean = losses.reduce((a, b) => a + b, 0) / FOLDS;
  const spread = Math.sqrt(losses.reduce((a, b) => a + (b - mean) ** 2, 0) / (FOLDS - 1) / FOLDS);
  const directedOnes = scored.filter(({ label }) => label === '2-3' || label === '3-2');
  const right = directedOnes.filter(({ label, score }) => (label === '2-3' ? score > 0 : score < 0)).length;
  return { loss: mean, lossError: spread, signRight: right / directedOnes.length, scored };
}

/** True of a rhythm that experts heard state a direction. */
export const directed = (row: { readonly label: string }): boolean => row.label === '2-3' || row.label === '3-2';

/** Per cent: directed rhythms named right and named the opposite, neutral and undecided ones named neutral. */
export interface Named {
  readonly right: number;
  readonly opposite: number;
  readonly neutral: number;
  readonly undecided: number;
}

/** How the scores are named when scores within `threshold` of 0 count as neutral. */
export function atThreshold(scored: HeldOut['scored'], threshold: number): Named {
  const share = (labels: readonly string[], test: (score: number, label: string) => boolean): number => {
    const chosen = scored.filter(({ label }) => labels.includes(label));
    return (100 * chosen.filter(({ score, label }) => test(score, label)).length) / chosen.length;
  };
  const toward = (score: number, label: string): number => (label === '2-3' ? score : -score);
  return {
    right: share(['2-3', '3-2'], (score, label) => toward(score, label) > threshold),
    opposite: share(['2-3', '3-2'], (score, label) => toward(score, label) < -threshold),
    neutral: share(['neutral'], (score) => Math.abs(score) <= threshold),
    undecided: share(['undecided'], (score) => Math.abs(score) <= threshold),
  };
}
