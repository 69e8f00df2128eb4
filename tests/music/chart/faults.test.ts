import { describe, expect, it } from 'vitest';
import { CHART_FAULT_CODES } from '../../../src/music/chart/fault-codes';
import { readChart } from '../../../src/music/chart/read';
import { unfold } from '../../../src/music/chart/unfold';
import { BAD } from './bad-charts';
import { faultsOf } from './chart-of';

describe('a fault', () => {
  it.each(BAD)('is found at its place in %j', (text, expected) => {
    const found = faultsOf(text).map(({ code, line, column, text: typed, nearest }) => [code, `${line}:${column}`, typed, nearest]);
    expect(found).toEqual(expected);
  });

  it.each(BAD.filter(([, rows]) => rows.some((row) => row[3] !== null)))(
    'is mended when its nearest text is put in its place: %j',
    (text) => {
      const before = faultsOf(text);
      const fault = before.find(({ nearest }) => nearest !== null);
      const lines = text.split('\n');
      const line = lines[(fault?.line ?? 1) - 1] ?? '';
      const at = (fault?.column ?? 1) - 1;
      expect(line.slice(at, at + (fault?.text.length ?? 0))).toBe(fault?.text);
      lines[(fault?.line ?? 1) - 1] = line.slice(0, at) + fault?.nearest + line.slice(at + (fault?.text.length ?? 0));
      const after = readChart(lines.join('\n'));
      expect(after.ok ? 0 : after.faults.length).toBe(before.length - 1);
    },
  );

  it('says for a bare tempo what both readings mean', () => {
    expect(faultsOf('tempo: 92\n| C |')[0]?.expected).toContain('half = 92 (quarter = 184) or quarter = 92 (half = 46)');
    expect(faultsOf('tempo: 184\n| C |')[0]?.expected).toContain('quarter = 184 (half = 92)');
  });

  it.each(['0', '-5', '9999', 'fast'])('names the range for a tempo of %s', (tempo) => {
    expect(faultsOf(`tempo: ${tempo}\n| C |`)[0]?.expected).toContain('25 to 140 half notes');
  });

  it('does not hide the others: all are reported together, in the order of the text', () => {
    const faults = faultsOf('tempo: fast\nkey: X\n| Qx | C F G |\n| C {9} :|\nform: A, B');
    expect(faults.map(({ code, line }) => `${code} ${line}`)).toEqual([
      'unknown tempo 1',
      'unknown key 2',
      'unknown chord 3',
      'chord count 3',
      'repeat not opened 4',
      'unknown hit 4',
      'unknown section 5',
    ]);
  });

  it('has a code of the list, and only the codes that need a very long text have no row here', () => {
    const seen = new Set(BAD.flatMap(([, rows]) => rows.map(([code]) => code)));
    expect(CHART_FAULT_CODES.filter((code) => !seen.has(code))).toEqual(['text too long', 'too many faults', 'too many bars']);
  });
});

describe('a very long text', () => {
  it('of 2,000 bars is read', () => {
    const read = readChart(Array.from({ length: 500 }, () => '| Em7 | A7 | D6 | B7b9 |').join('\n'));
    expect(read.ok && read.value.sections[0]?.bars.length).toBe(2000);
  });

  it('is a fault beyond 4,000 sounding bars, however few are written', () => {
    const rows = '[A, x99]\n|: C | F | G7 :| x40\nform: A, A, A';
    expect(faultsOf(rows)).toEqual([
      { code: 'too many bars', line: 2, column: 8, text: 'F', expected: expect.stringContaining('4000 bars'), nearest: null },
    ]);
    expect(faultsOf('| rest 999 |\n'.repeat(5))[0]?.code).toBe('too many bars');
  });

  it('counts an open vamp as often as it is held', () => {
    const twice = readChart('[A, on cue]\n| C | rest 999 | rest 999 |');
    expect(twice.ok && unfold(twice.value).bars.length).toBe(2 * 1999);
    expect(faultsOf('[A, on cue]\n| C | rest 999 | rest 999 | (2/4) C |').map(({ code }) => code)).toEqual(['too many bars']);
  });

  it('is a fault beyond 262,144 characters, at once', () => {
    const start = performance.now();
    expect(faultsOf('| C '.repeat(250_000)).map(({ code }) => code)).toEqual(['text too long']);
    expect(performance.now() - start).toBeLessThan(200);
  });

  it('full of faults lists 500 of them and says that there are more', () => {
    const faults = faultsOf('| Q1 | Q2 '.repeat(20_000));
    expect(faults).toHaveLength(501);
    expect(faults[500]).toMatchObject({ code: 'too many faults', expected: expect.stringContaining('more than 500') });
  });

  it.each(['[', ']', '|', ':', '{', '<', '(', '>', '%', '/', '|:', ':|', ';', 'form:', 'C', ' ', '\n', '[A]', '|1.', '😀', '\ud800'])(
    'of nothing but %j neither hangs nor throws',
    (bit) => {
      const start = performance.now();
      readChart(bit.repeat(Math.floor(200_000 / bit.length)));
      readChart(`${bit} `.repeat(50_000));
      expect(performance.now() - start).toBeLessThan(5000);
    },
  );
});
