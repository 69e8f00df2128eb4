import { describe, expect, it } from 'vitest';
import { CHART_FAULT_CODES } from '../../../src/music/chart/fault-codes';
import { readChart } from '../../../src/music/chart/read';
import { unfold } from '../../../src/music/chart/unfold';
import { faultsOf } from './chart-of';

/** Text, then the faults it must have: code, line:column, offending text, nearest valid text. */
const BAD: readonly (readonly [string, readonly (readonly [string, string, string, string | null])[]])[] = [
  ['', [['no bars', '1:1', '', null]]],
  ['; only a remark\n\ntitle: x', [['no bars', '1:1', '', null]]],
  ['PK\u0003\u0004binary\u0000', [['no text', '1:3', '\u0003', null]]],
  ['title: x\n| C | \ufffd |', [['no text', '2:7', '\ufffd', null]]],
  ['titel: x\n| C |', [['unknown header', '1:1', 'titel', 'title']]],
  ['key: C\nkey: D\n| C |', [['header twice', '2:1', 'key: D', null]]],
  ['| C |\nstyle: son', [['header after music', '2:1', 'style: son', null]]],
  ['key: H\n| C |', [['unknown key', '1:6', 'H', 'B']]],
  ['clave: 3-3 son\n| C |', [['unknown clave', '1:8', '3-3 son', '2-3 son']]],
  ['clave: son\n| C |', [['unknown clave', '1:8', 'son', null]]],
  ['clave: 2-3 bembe\n| C |', [['clave against meter', '1:8', '2-3 bembe', '2-3 son']]],
  ['meter: 6/8\nclave: 3-2 son\n| C |', [['clave against meter', '2:8', '3-2 son', '3-2 bembe']]],
  ['tempo: 92\n| C |', [['bare tempo', '1:8', '92', 'half = 92']]],
  ['tempo: 184\n| C |', [['bare tempo', '1:8', '184', 'quarter = 184']]],
  ['tempo: 0\n| C |', [['tempo range', '1:8', '0', null]]],
  ['tempo: −5\n| C |', [['tempo range', '1:8', '−5', null]]],
  ['tempo: half = 141\n| C |', [['tempo range', '1:8', 'half = 141', null]]],
  ['tempo: quarter = 49\n| C |', [['tempo range', '1:8', 'quarter = 49', null]]],
  ['tempo: 9999\n| C |', [['tempo range', '1:8', '9999', null]]],
  ['tempo: fast\n| C |', [['unknown tempo', '1:8', 'fast', null]]],
  ['tempo: hlaf = 92\n| C |', [['unknown tempo', '1:8', 'hlaf = 92', 'half = 92']]],
  ['style: salza\n| C |', [['unknown style', '1:8', 'salza', 'salsa']]],
  ['meter: 3/4\n| C |', [['unknown meter', '1:8', '3/4', '4/4']]],
  ['changes: as plaid\n| C |', [['unknown changes', '1:10', 'as plaid', 'as played']]],
  ['figure: x.xx\n| C |', [['unknown figure', '1:9', 'x.xx', null]]],
  ['[A\n| C |', [['head not closed', '1:1', '[A', '[A]']]],
  ['[, x2]\n| C |', [['no section name', '1:1', '[, x2]', '[A, x2]']]],
  ['[A]\n| C |\n[a]\n| D |', [['section twice', '3:1', '[a]', '[a2]']]],
  ['[A]\n[B]\n| D |', [['empty section', '1:1', '[A]', null]]],
  ['[A, roel: coro]\n| C |', [['unknown attribute', '1:5', 'roel: coro', 'role: coro']]],
  ['[A, x2, x3]\n| C |', [['attribute twice', '1:9', 'x3', null]]],
  ['[A, role:]\n| C |', [['unknown role', '1:5', 'role:', null]]],
  ['[A, x0]\n| C |', [['unknown times', '1:5', 'x0', 'x1']]],
  ['[A, clave restart 2-2]\n| C |', [['unknown direction', '1:19', '2-2', '2-3']]],
  ['| C |\nform:', [['empty form', '2:6', '', null]]],
  ['[A]\n| C |\n[Coro]\n| F |\nform: A, Corro, A', [['unknown section', '5:10', 'Corro', 'Coro']]],
  ['| C |   | D |', [['empty bar', '1:6', '   ', '%']]],
  ['| C |:', [['empty bar', '1:5', '|:', null]]],
  ['| Em7 | hm7 |', [['unknown chord', '1:9', 'hm7', 'Bm7']]],
  ['| C4 |', [['unknown chord', '1:3', 'C4', 'Csus4']]],
  [`| C${'7'.repeat(70)} |`, [['symbol too long', '1:3', `C${'7'.repeat(70)}`, null]]],
  ['| C F G A B |', [['chord count', '1:3', 'C F G A B', 'C F G A | B']]],
  ['| C F G |', [['chord count', '1:3', 'C F G', 'C / F G']]],
  ['| C / F |', [['slash count', '1:3', 'C / F', 'C / F /']]],
  ['| / / C / |', [['nothing to hold', '1:3', '/ / C /', null]]],
  ['| % | C |', [['nothing to repeat', '1:3', '%', null]]],
  ['| C | %% |', [['nothing to repeat', '1:7', '%%', null]]],
  ['| C | D % |', [['stands alone', '1:7', 'D %', 'D | %']]],
  ['| C | rest x |', [['unknown rest', '1:7', 'rest x', 'rest 8']]],
  ['| C | rest8 |', [['unknown rest', '1:7', 'rest8', 'rest 8']]],
  ['| > C / F G |', [['push without chord', '1:3', '> C', '>C']]],
  ['| (3/4) C |', [['unknown bar length', '1:3', '(3/4)', '(2/4)']]],
  ['| C | (pickup) D |', [['pickup not first', '1:7', '(pickup) D', null]]],
  ['| C <senyo> |', [['unknown mark', '1:5', '<senyo>', '<segno>']]],
  ['| <fine> | C |', [['mark without bar', '1:3', '<fine>', null]]],
  ['| C {1 2& |', [['not closed', '1:5', '{1 2&', null]]],
  ['| C {5} |', [['unknown hit', '1:6', '5', null]]],
  ['| C {1 1~} |', [['hit twice', '1:8', '1~', null]]],
  ['| C {} |', [['no hits', '1:5', '{}', null]]],
  ['| C | D :|', [['repeat not opened', '1:7', 'D', null]]],
  ['|: C | D |', [['repeat not closed', '1:4', 'C', null]]],
  ['|: C |: D :|', [['repeat not closed', '1:4', 'C', null]]],
  ['|: |: D :|', [['repeat in repeat', '1:4', '|:', null]]],
  ['|: C :| x1', [['repeat times', '1:6', ':| x1', ':| x2']]],
  ['| C |1. D ||', [['ending without repeat', '1:9', 'D', null]]],
  ['|: C |1. D :|3. E ||', [['ending numbers', '1:10', 'D', null]]],
  ['|: C |1. D |2. E ||', [['repeat not closed', '1:16', 'E', null]]],
  ['| C <D.S. al coda> |', [['jump without target', '1:3', 'C <D.S. al coda>', null]]],
  ['| C <D.C. al fine> |', [['jump without target', '1:3', 'C <D.C. al fine>', null]]],
];

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
