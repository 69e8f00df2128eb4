import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { childNumber, childrenNamed, childText, readXml, type XmlNode } from '../../../src/exchange/musicxml/read-xml';
import { writeMusicXml } from '../../../src/exchange/musicxml/write-musicxml';
import { MXL_TYPE, writeMxl } from '../../../src/exchange/musicxml/write-mxl';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { type ArrangeOptions, arrange, type Score } from '../../../src/music/score';
import { expectedStaves } from './expected-notes';
import { NO_SCHEMA, schemaCheck } from './schema';
import { readWithVerovio } from './verovio-reader';

function scoreOf(text: string, options: ArrangeOptions = {}): Score {
  const read = readChart(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return arrange(read.value, options);
}
const demo = (id: string): string => DEMO_BOOK.find((one) => one.id === id)?.text ?? '';

function tree(xml: string): XmlNode {
  const read = readXml(xml);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const measures = (xml: string): { part: XmlNode; bars: readonly XmlNode[] }[] =>
  childrenNamed(tree(xml), 'part').map((part) => ({ part, bars: childrenNamed(part, 'measure') }));

/** A song in on-beat style, where nothing is held over a barline, so that repeats can be folded. */
const BOLERO = `title: Slow Crossing
key: G
clave: 2-3 son
tempo: half = 45
style: bolero

[A]
|: G6 | Em7 | Am7 | D7 :| x4
[B]
|: C6 | D7 | G6 | Em7 |1. Am7 | D7 :|2. Am7 | G6 ||
[C]
| C6 | D7 | G6 | E7 |
`;

/** Charts that are unlike each other: a pickup and 6/8, a short bar and a restart, hits and a stop, a push, jumps. */
const ODD: readonly (readonly [string, string, ArrangeOptions])[] = [
  ['demo with hits and a stop', demo('demo-quay-street-parade'), { level: 4 }],
  ['six flats, with a slash chord', 'key: Gb\n\n| Gb6/Bb | Abm7 | Db7 | Cb6 |\n', { level: 1 }],
  ['6/8', 'title: Bell Buoy\nkey: Am\nmeter: 6/8\nclave: 2-3 bembe\n\n| Am | Dm E7 | Am | E7 |\n', {}],
  [
    'a pickup, a short bar, a restart and a push',
    'key: Bb\nclave: 3-2 son\n\n[A]\n| (pickup) F7 | Bb6 | >Gm7 | (2/4) Cm7 | F7 ||\n[B, clave restart 2-3]\n| Bb6 / Eb6 F7 | Bb6 |\n',
    { pickup: true },
  ],
  ['repeats that can be folded', BOLERO, {}],
  [
    'rumba clave, minor, the left hand with the bass, open',
    'key: Cm\nclave: 3-2 rumba\n\n| Dm7b5 | G7alt | Cm6 | Cm6 |\n',
    { hands: 'tumbao', closed: false },
  ],
];

describe('writeMusicXml, read back by verovio', () => {
  it.each(ODD)('%s: no warning, tempo, pitches, onsets and lengths as in the score', async (_, text, options) => {
    const score = scoreOf(text, options);
    const read = await readWithVerovio(writeMusicXml(score));
    expect(read.loaded).toBeTruthy();
    expect(read.warnings).toEqual([]);
    expect(read.halfNotes).toBeCloseTo(score.tempo, 2);
    const { pitched, unpitched } = expectedStaves(score);
    expect(read.staves.slice(0, pitched.length)).toEqual(pitched);
    expect(read.staves.slice(pitched.length).map((notes) => notes.length > 0)).toEqual(unpitched.map(() => true));
    unpitched.forEach((ticks, part) => {
      const heard = new Set(read.staves[pitched.length + part]?.map(({ tick }) => tick));
      expect(ticks.filter((tick) => !heard.has(tick))).toEqual([]);
    });
    const clave = read.staves[pitched.length]?.map(({ tick }) => tick);
    expect(clave).toEqual(unpitched[0]);
  });

  it('folds repeats and endings where the passes are alike, and verovio plays them out', async () => {
    const score = scoreOf(BOLERO);
    const xml = writeMusicXml(score);
    const piano = measures(xml)[0]?.bars ?? [];
    // A stands once, its last bar as two endings since it leads on otherwise the fourth time; B with two endings; C as it is: 3 + 1 + 1, 4 + 2 + 2, 4.
    expect([piano.length, score.bars.length]).toEqual([17, 32]);
    expect(xml).toContain('<repeat direction="backward" times="4"/>');
    expect([...xml.matchAll(/<ending number="(.*?)" type="(\w+)"/g)].slice(0, 8).map((found) => `${found[1]} ${found[2]}`)).toEqual([
      ...['1, 2, 3 start', '1, 2, 3 stop', '4 start', '4 discontinue'],
      ...['1 start', '1 stop', '2 start', '2 discontinue'],
    ]);
    const read = await readWithVerovio(xml);
    expect(read.staves[0]).toEqual(expectedStaves(score).pitched[0]);
  });
});

describe('what writeMusicXml says', () => {
  const score = scoreOf(demo('demo-last-ferry'), { level: 4 });
  const xml = writeMusicXml(score, { encodingDate: '2026-11-25' });

  it('is valid against the MusicXML 4.0 schema', ({ skip }) => {
    const check = schemaCheck();
    if (!check) {
      console.log(NO_SCHEMA);
      return skip(NO_SCHEMA);
    }
    const folder = mkdtempSync(join(tmpdir(), 'musicxml-'));
    try {
      for (const [name, text, options] of ODD) {
        const file = join(folder, 'score.musicxml');
        writeFileSync(file, writeMusicXml(scoreOf(text, options), { encodingDate: '2026-11-25' }));
        expect(check(file), name).toBeNull();
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('has measures that add up on every staff, with whole durations', () => {
    for (const { bars } of measures(xml)) {
      let length = 0;
      for (const bar of bars) {
        const attributes = childrenNamed(bar, 'attributes')[0];
        const time = attributes && childrenNamed(attributes, 'time')[0];
        // Eight divisions to the quarter note.
        if (time) length = (Number(childText(time, 'beats')) * 32) / Number(childText(time, 'beat-type'));
        const sums = new Map<string, number>();
        for (const note of childrenNamed(bar, 'note')) {
          if (childrenNamed(note, 'chord').length > 0) continue;
          const staff = childText(note, 'staff');
          sums.set(staff, (sums.get(staff) ?? 0) + (childNumber(note, 'duration') ?? Number.NaN));
        }
        expect([...sums.values()]).toEqual([...sums].map(() => length));
      }
    }
  });

  it('ties with tie and tied alike, and every tie has its other end on the next note of the staff', () => {
    const ties = [...xml.matchAll(/<tie type="(\w+)"\/>/g)].map((found) => found[1]);
    const tied = [...xml.matchAll(/<tied type="(\w+)"\/>/g)].map((found) => found[1]);
    expect(ties.length).toBeGreaterThan(20);
    expect(tied).toEqual(ties);
    for (const { bars } of measures(xml)) {
      const open = new Map<string, number>();
      for (const note of bars.flatMap((bar) => childrenNamed(bar, 'note'))) {
        const pitch = childrenNamed(note, 'pitch')[0];
        if (!pitch) continue;
        const place = [childText(note, 'staff'), childText(pitch, 'step'), childText(pitch, 'alter'), childText(pitch, 'octave')].join();
        const kinds = childrenNamed(note, 'tie').map(({ attributes }) => attributes.type);
        if (kinds.includes('stop')) {
          expect(open.get(place)).toBe(1);
          open.delete(place);
        }
        expect(open.has(place)).toBe(false);
        if (kinds.includes('start')) open.set(place, 1);
      }
      expect([...open]).toEqual([]);
    }
  });

  it('says alter on every note that the key signature alters (MusicXML 4.0 tutorial, The MIDI-Compatible Part)', () => {
    // D major has F sharp and C sharp; in this chart no natural F or C is played against E7, A7, D6 … except where a chord asks for it.
    const pitches = [...xml.matchAll(/<step>([A-G])<\/step>\s*(?:<alter>(-?\d)<\/alter>\s*)?<octave>/g)];
    const sharpened = pitches.filter(([, step, alter]) => step === 'F' && alter === '1');
    expect(sharpened.length).toBeGreaterThan(5);
    const named = new Set(
      [...score.parts.rightHand, ...score.parts.leftHand, ...score.parts.bass].flatMap(({ names }) =>
        names.map((name) => name.replace(/\d/, '')),
      ),
    );
    const written = new Set(pitches.map(([, step = '', alter]) => step + (alter === '1' ? '#' : alter === '-1' ? 'b' : '')));
    expect([...written].sort()).toEqual([...named].sort());
  });

  it('names title, software and day, sections as rehearsal marks, half note tempo, cut time, and the side of every bar', () => {
    expect(xml).toContain('<work-title>Last Ferry</work-title>');
    expect(xml).toContain('<software>Contratiempo</software>');
    expect(xml).toContain('<encoding-date>2026-11-25</encoding-date>');
    expect([...xml.matchAll(/<rehearsal>(.*?)<\/rehearsal>/g)].map((found) => found[1])).toEqual(['A', 'A', 'B', 'A', 'Coro']);
    expect(xml).toMatch(/<beat-unit>half<\/beat-unit>\s*<per-minute>92<\/per-minute>/);
    expect(xml).toContain('<sound tempo="184"/>');
    expect(xml).toMatch(/<time symbol="cut">\s*<beats>2<\/beats>\s*<beat-type>2<\/beat-type>/);
    expect([...xml.matchAll(/<words>(\d)-side<\/words>/g)].map((found) => Number(found[1]))).toEqual(score.bars.map(({ side }) => side));
  });

  it('numbers instruments as MusicXML does: grand piano 1, claves 76, percussion on channel 10 (General MIDI level 1 plus one)', () => {
    expect(xml).toContain('<midi-program>1</midi-program>');
    expect(xml).toContain('<midi-unpitched>76</midi-unpitched>');
    expect(xml).toMatch(/<midi-channel>10<\/midi-channel>\s*<midi-unpitched>76/);
    // Two staves, the upper one first (MusicXML 4.0, staves).
    expect(xml).toMatch(/<staves>2<\/staves>\s*<clef number="1">/);
  });

  it('writes articulations, and fingers when they are asked for: an octave with thumb and fifth or fourth finger (common practice, no source)', () => {
    expect(xml).toContain('<accent/>');
    expect(xml).not.toContain('<fingering>');
    const fingered = writeMusicXml(score, { fingering: 'every note' });
    const fingers = new Set([...fingered.matchAll(/<fingering>(\d)<\/fingering>/g)].map((found) => found[1]));
    expect(['1', '4', '5'].every((finger) => fingers.has(finger))).toBe(true);
    expect([...fingers].every((finger) => Number(finger) >= 1 && Number(finger) <= 5)).toBe(true);
  });

  it('leaves out markup and what XML forbids, whatever the title, and gives the same bytes twice', async () => {
    const odd = { ...scoreOf('| C6 | F7 |\n'), title: '<img src=x onerror=alert(1)> "Faro" & \u0000\u0007\ud800 Salón' };
    const written = writeMusicXml(odd);
    expect(written).toContain('<work-title>&lt;img src=x onerror=alert(1)&gt; "Faro" &amp;  Salón</work-title>');
    expect(writeMusicXml(odd)).toBe(written);
    expect((await readWithVerovio(written)).warnings).toEqual([]);
    expect(() => writeMusicXml(score, { encodingDate: 'yesterday' })).toThrow('encoding date');
  });

  it('packs .mxl as MusicXML 4.0 asks: the type first and stored as it is, then the container, then the score', () => {
    const bytes = writeMxl(xml);
    const start = String.fromCharCode(...bytes.subarray(0, 80));
    expect(start.startsWith('PK\u0003\u0004')).toBe(true);
    expect(bytes[8]).toBe(0);
    expect(start.slice(30, 38 + MXL_TYPE.length)).toBe(`mimetype${MXL_TYPE}`);
    const files = unzipSync(bytes);
    expect(Object.keys(files)).toEqual(['mimetype', 'META-INF/container.xml', 'score.musicxml']);
    expect(new TextDecoder().decode(files['score.musicxml'])).toBe(xml);
    expect(new TextDecoder().decode(files['META-INF/container.xml'])).toContain('<rootfile full-path="score.musicxml"');
    expect(writeMxl(xml)).toEqual(bytes);
    expect(bytes.length).toBeLessThan(xml.length / 10);
  });
});
