import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';

const README = readFileSync('README.md', 'utf8');
const DEVELOPERS = readFileSync('DEVELOPERS.md', 'utf8');
const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };

/** Fenced blocks of a document, without their indent. */
const blocks = (text: string) =>
  [...text.matchAll(/^( *)```\n([\s\S]*?)^ *```$/gm)].map(([, indent = '', body = '']) => body.replace(new RegExp(`^${indent}`, 'gm'), ''));

describe('the README', () => {
  it('gives the two commands, and every npm script that the documents name exists', () => {
    expect(blocks(README)[0]).toMatch(/^npm ci && npm start .*\nnpm ci && npm test /);
    const named = [...`${README}${DEVELOPERS}`.matchAll(/npm run (?:-s )?([\w:]+)/g)].map(([, name = '']) => name);
    expect([...new Set(named)].filter((name) => !(name in scripts))).toEqual([]);
  });

  it('shows a chart that is read without a fault and makes music', () => {
    const chart = blocks(README).find((block) => block.startsWith('title:'));
    const read = readChart(chart ?? '');
    expect(read.ok ? [] : read.faults).toEqual([]);
    if (!read.ok) return;
    const score = arrange(read.value, {});
    expect(score.bars.map(({ section }) => section)).toEqual([...Array<string>(16).fill('A'), 'Coro', 'Coro']);
    expect(score.alignment.verdict).toBe('aligned');
  });

  it('names commands of the command line that answer', () => {
    const lines = blocks(README).flatMap((block) => block.split('\n').filter((line) => line.startsWith('npm run -s cli -- chord')));
    expect(lines).toHaveLength(1);
    const args = (lines[0] ?? '').split(' ').slice(5);
    const { stdout, status } = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout.trim().split('\n')).toHaveLength(args.length - 1);
  }, 30_000);

  it('has its picture, and names files that exist', () => {
    const paths = [...`${README}${DEVELOPERS}`.matchAll(/`((?:src|tests|public)\/[\w./-]+\.\w+)`|\]\((public\/[^)]+)\)/g)].map(
      (match) => match[1] ?? match[2] ?? '',
    );
    expect(paths.length).toBeGreaterThan(10);
    expect(paths.filter((path) => !existsSync(path))).toEqual([]);
  });
});
