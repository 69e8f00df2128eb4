import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readMusicXml } from '../../../src/exchange/musicxml/read-musicxml';
import { MOST_BYTES } from '../../../src/exchange/musicxml/read-score-text';
import { IMPORT_WORDS } from '../../../src/words/import-screen';
import { attributes, bytesOf, file, harmony, measure } from './lead-sheet-file';

const WHOLE = file('Whole', measure(1, ['C'], { first: attributes(0, 'major') }) + measure(2, ['F', 'G7']));
const container = (path: string): Uint8Array =>
  strToU8(
    `<container><rootfiles><rootfile full-path="${path}" media-type="application/vnd.recordare.musicxml+xml"/></rootfiles></container>`,
  );

/** The one fault of a file, and its sentence. */
function faultOf(bytes: Uint8Array): { code: string; line: number | null; column: number | null; sentence: string } {
  const read = readMusicXml(bytes, 'bad.musicxml');
  if (read.ok) throw new Error('the file was read');
  expect(read.faults).toHaveLength(1);
  const fault = read.faults[0] as (typeof read.faults)[number];
  return { code: fault.code, line: fault.line, column: fault.column, sentence: IMPORT_WORDS.fault(fault) };
}

/** Ten entities, each ten times the one before: expanded, a thousand million letters. */
const BOMB = `<?xml version="1.0"?>
<!DOCTYPE score-partwise [<!ENTITY a0 "la">${Array.from({ length: 9 }, (_, n) => `<!ENTITY a${n + 1} "${`&a${n};`.repeat(10)}">`).join('')}]>
<score-partwise><part-list/><part id="P1"><measure number="1">&a9;</measure></part></score-partwise>`;

describe('files that are no chart', () => {
  it.each<readonly [string, Uint8Array, { code: string; line?: number; says: RegExp }]>([
    [
      'truncated',
      bytesOf(WHOLE.slice(0, WHOLE.indexOf('<kind text="7"'))),
      {
        code: 'cut off',
        line: 4,
        says: /^Line 4, column \d+: the file ends too early “unclosed tag: \w+”\. Expected: the rest of the file, down to the end of <\w+>\.$/,
      },
    ],
    [
      'truncated inside a tag',
      bytesOf(WHOLE.slice(0, WHOLE.indexOf('<kind text="7"') + 8)),
      { code: 'cut off', says: /the rest of the file/ },
    ],
    [
      '50 MB',
      new Uint8Array(50 * 1024 * 1024).fill(0x20),
      { code: 'too large', says: /^The file is too large “50 MB”\. Expected: a file of at most 16 MB, also when it is unpacked\.$/ },
    ],
    [
      'an entity bomb',
      bytesOf(BOMB),
      {
        code: 'document type',
        line: 2,
        says: /declares things of its own .* which is not safe to read\. Expected: a MusicXML file without declarations of entities\.$/,
      },
    ],
    [
      'an external entity',
      bytesOf('<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/hostname">]><a>&x;</a>'),
      { code: 'document type', says: /not safe/ },
    ],
    ['an entity nobody declared', bytesOf(WHOLE.replace('Whole', '&later;')), { code: 'not well-formed', says: /damaged/ }],
    [
      'no bars',
      bytesOf(file('Empty', '')),
      { code: 'no bars', says: /^Line 3, column 1: the score has no bar\. Expected: at least one <measure>\.$/ },
    ],
    ['no parts', bytesOf('<score-partwise version="4.0"><part-list/></score-partwise>'), { code: 'no parts', says: /has no part/ }],
    [
      'no chord symbols',
      bytesOf(file('Tune', measure(1, [], { first: attributes(0, 'major') }))),
      { code: 'no chords', says: /no chord symbols/ },
    ],
    [
      '7/8',
      bytesOf(file('Seven', measure(1, ['C'], { first: attributes(0, 'major', '<beats>7</beats><beat-type>8</beat-type>') }))),
      { code: 'meter', line: 4, says: /a bar in “7\/8”\. Expected: 4\/4 or 2\/2/ },
    ],
    [
      '6/8 after 4/4',
      bytesOf(
        file(
          'Both',
          measure(1, ['C'], { first: attributes(0, 'major') }) +
            measure(2, ['F'], { first: '<attributes><time><beats>6</beats><beat-type>8</beat-type></time></attributes>' }),
        ),
      ),
      { code: 'meter', says: /4\/4 throughout/ },
    ],
    [
      'another kind of XML',
      bytesOf('<html><body>no</body></html>'),
      { code: 'another root', line: 1, says: /XML of another kind “<html>”/ },
    ],
    [
      'text',
      bytesOf('| Em7 | A7 |\n'),
      { code: 'not a score file', says: /^This is no score file\. Expected: a MusicXML file: \.musicxml, \.xml or \.mxl\.$/ },
    ],
    ['nothing', new Uint8Array(), { code: 'not a score file', says: /no score file/ }],
    [
      'a tag that closes another',
      bytesOf(WHOLE.replace('</harmony>', '</harm>')),
      { code: 'not well-formed', line: 4, says: /^Line 4, column \d+: the file is damaged/ },
    ],
    ['two hundred levels', bytesOf('<a>'.repeat(200) + '</a>'.repeat(200)), { code: 'too deep', says: /at most 64 levels/ }],
    ['a zip that is none', bytesOf('PK\u0003\u0004 nonsense that goes on'), { code: 'broken archive', says: /cannot be opened/ }],
    [
      'a zip cut off',
      zipSync({ 'score.xml': strToU8(WHOLE) }).subarray(0, 120),
      { code: 'broken archive', says: /compressed MusicXML file \(\.mxl\) that is whole/ },
    ],
    [
      'a zip of pictures',
      zipSync({ 'a.png': strToU8('x'), 'b.png': strToU8('y') }),
      { code: 'no score in the archive', says: /META-INF\/container\.xml/ },
    ],
    [
      'a container that names nothing there',
      zipSync({ 'META-INF/container.xml': container('gone.xml') }),
      { code: 'no score in the archive', says: /no score/ },
    ],
    [
      'a zip of 50 MB of blanks',
      zipSync({ 'META-INF/container.xml': container('s.xml'), 's.xml': new Uint8Array(50 * 1024 * 1024).fill(0x20) }),
      { code: 'too large', says: /“50 MB”/ },
    ],
  ])('%s: one clear sentence', (_, bytes, { code, line, says }) => {
    const before = performance.now();
    const fault = faultOf(bytes);
    expect(performance.now() - before).toBeLessThan(20_000);
    expect([fault.code, line ?? fault.line]).toEqual([code, fault.line]);
    expect(fault.sentence).toMatch(says);
    expect(fault.sentence).not.toContain('\n');
  });

  it('reads UTF-8 with a mark and UTF-16 both ways round', () => {
    const marked = `\ufeff${WHOLE.replace('encoding="UTF-8"', 'encoding="UTF-16"')}`;
    const units = [...marked].map((sign) => sign.charCodeAt(0));
    for (const bytes of [
      bytesOf(`\ufeff${WHOLE}`),
      Uint8Array.from(units.flatMap((unit) => [unit & 255, unit >> 8])),
      Uint8Array.from(units.flatMap((unit) => [unit >> 8, unit & 255])),
    ])
      expect(readMusicXml(bytes, 'x.xml')).toMatchObject({ ok: true, value: { title: 'Whole' } });
  });

  it('reads the score that a container names, and one alone without a container', () => {
    const other = file('Other', measure(1, ['A'], { first: attributes(3, 'major') }));
    const both = { 'a.xml': strToU8(other), 'b/score.xml': strToU8(WHOLE) };
    expect(readMusicXml(zipSync({ ...both, 'META-INF/container.xml': container('b/score.xml') }), 'x.mxl')).toMatchObject({
      value: { title: 'Whole' },
    });
    expect(readMusicXml(zipSync({ 'a.xml': strToU8(other) }), 'x.mxl')).toMatchObject({ value: { title: 'Other' } });
  });

  it('stops at an archive whose directory claims more files than any score has', () => {
    const many = zipSync(Object.fromEntries(Array.from({ length: 1001 }, (_, n) => [`${n}.txt`, new Uint8Array()])));
    expect(faultOf(many)).toMatchObject({ code: 'broken archive', sentence: expect.stringContaining('more than 1000 files') });
  });

  it('never throws, however a file is cut or its bytes are changed', () => {
    const whole = bytesOf(WHOLE);
    const packed = zipSync({ 's.xml': whole });
    let seed = 7;
    const next = (below: number): number => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return seed % below;
    };
    for (let round = 0; round < 400; round++) {
      const bytes = (round % 2 === 0 ? whole : packed).slice();
      for (let change = 0; change < 3; change++) bytes[next(bytes.length)] = next(256);
      expect(() => readMusicXml(bytes.subarray(0, next(2) === 0 ? bytes.length : next(bytes.length)), 'x')).not.toThrow();
    }
  });

  it('leaves out a chord of an unknown kind without readable text, says which and where, and keeps the bar', () => {
    const odd = WHOLE.replace(harmony('F'), harmony('F').replace('<kind text="">major</kind>', '<kind>min7</kind>'));
    const read = readMusicXml(bytesOf(odd), 'x.xml');
    if (!read.ok) throw new Error('not read');
    expect(read.value.text).toContain('| C | / / G7 / |');
    expect(read.value.notTaken.filter(({ code }) => code !== 'notes').map(IMPORT_WORDS.notTaken)).toEqual([
      'Bar 2: the chord F is of a kind this reader does not know (min7); the chord before it goes on.',
    ]);
  });

  it('has a limit that a score of 4,000 bars stays below', () => {
    expect(MOST_BYTES).toBe(16 * 1024 * 1024);
    const bars = Array.from({ length: 3000 }, (_, i) => measure(i + 1, ['C', 'F'], i === 0 ? { first: attributes(0, 'major') } : {}));
    const long = bytesOf(file('Long', bars.join('')));
    expect(long.length).toBeLessThan(MOST_BYTES);
    expect(readMusicXml(long, 'long.xml').ok).toBe(true);
    const endless = bytesOf(file('Endless', [...bars, ...bars].join('')));
    expect(faultOf(endless)).toMatchObject({ code: 'not a chart', sentence: expect.stringContaining('at most 4000 bars') });
  });
});
