import { describe, expect, it } from 'vitest';
import { scoreJson } from '../../src/exchange/score-json';
import { readChart } from '../../src/music/chart/read';
import { type ArrangeOptions, arrange } from '../../src/music/score';

const CHART = `title: Last Ferry
key: Bm
clave: 2-3 son
[A, role: verse]
| Em7 F#7 | Bm7 | % | >G7 |
[B]
| N.C. | C#m7b5 {1 2& 4&~} | Bm6 |
`;
function json(options: ArrangeOptions = {}) {
  const read = readChart(CHART);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return scoreJson(arrange(read.value, options));
}

/** The fields that other programs read, typed from the written contract of the format, apart from the application. */
const FIELDS = {
  score: [
    'format',
    'ticksPerQuarter',
    'title',
    'key',
    'meter',
    'style',
    'closed',
    'clave',
    'tempo',
    'level',
    'devices',
    'bars',
    'parts',
    'alignment',
    'notices',
  ],
  bar: [
    'index',
    'writtenBar',
    'pass',
    'section',
    'role',
    'level',
    'kind',
    'tick',
    'ticks',
    'cycleStep',
    'side',
    'restart',
    'chords',
    'hits',
  ],
  chord: ['tick', 'symbol', 'push'],
  stroke: [
    'tick',
    'durationTicks',
    'soundingTicks',
    'midi',
    'names',
    'velocity',
    'role',
    'chord',
    'degrees',
    'leadTicks',
    'lift',
    'line',
    'device',
    'firstPassOnly',
    'why',
  ],
  parts: ['rightHand', 'leftHand', 'bass', 'clave', 'percussion'],
  alignment: ['verdict', 'states', 'score', 'reason'],
  notice: ['code', 'bar', 'text'],
};

describe('the score as JSON', () => {
  it('has the fields of the contract in every object', () => {
    const score = json();
    expect(Object.keys(score)).toEqual(FIELDS.score);
    expect(Object.keys(score.parts)).toEqual(FIELDS.parts);
    expect(Object.keys(score.alignment)).toEqual(FIELDS.alignment);
    for (const bar of score.bars) expect(Object.keys(bar)).toEqual(FIELDS.bar);
    for (const chord of score.bars.flatMap(({ chords }) => chords)) expect(Object.keys(chord)).toEqual(FIELDS.chord);
    for (const stroke of [...score.parts.rightHand, ...score.parts.leftHand, ...score.parts.bass])
      expect(Object.keys(stroke)).toEqual(FIELDS.stroke);
    for (const stroke of score.parts.clave) expect(Object.keys(stroke)).toEqual(['tick']);
    for (const notice of score.notices) expect(Object.keys(notice)).toEqual(FIELDS.notice);
    expect(score.notices.length).toBeGreaterThan(0);
  });

  it('says what the chart says', () => {
    const score = json({ level: 3 });
    expect(score).toMatchObject({
      format: 'contratiempo-score/1',
      ticksPerQuarter: 480,
      title: 'Last Ferry',
      key: 'Bm',
      meter: '4/4',
      closed: true,
      level: 3,
      devices: [],
      clave: { kind: 'son', direction: '2-3' },
    });
    const [first, second, third, fourth, rest, hit] = score.bars;
    expect(first).toMatchObject({
      index: 0,
      section: 'A',
      role: 'verse',
      level: 3,
      kind: 'groove',
      tick: 0,
      ticks: 1920,
      cycleStep: 0,
      side: 2,
      hits: [],
    });
    expect(first?.chords).toEqual([
      { tick: 0, symbol: 'Em7', push: false },
      { tick: 960, symbol: 'F#7', push: false },
    ]);
    expect(second).toMatchObject({ tick: 1920, cycleStep: 8, side: 3 });
    expect(third?.chords).toEqual([{ tick: 3840, symbol: 'Bm7', push: false }]);
    expect(fourth?.chords).toEqual([{ tick: 5760, symbol: 'G7', push: true }]);
    expect(rest).toMatchObject({ kind: 'rest', section: 'B', chords: [{ symbol: 'N.C.' }] });
    expect(hit).toMatchObject({
      kind: 'hit',
      hits: [
        { tick: 9600, step: 0, held: false },
        { tick: 10320, step: 3, held: false },
        { tick: 11280, step: 7, held: true },
      ],
    });
  });

  it('keeps midi, names and degrees parallel and ascending, names in ASCII, and explains every stroke', () => {
    const { rightHand, leftHand, bass } = json().parts;
    for (const { midi, names, degrees, why } of [...rightHand, ...leftHand, ...bass]) {
      expect([names.length, degrees.length]).toEqual([midi.length, midi.length]);
      expect([...midi].sort((a, b) => a - b)).toEqual(midi);
      for (const name of names) expect(name).toMatch(/^[A-G](b{0,2}|#{0,2})\d$/);
      expect(why).toHaveLength(1);
      expect(why[0]).toMatch(/^[A-G].+\.$/);
    }
  });

  it('survives being written and read as text', () => {
    const score = json();
    expect(JSON.parse(JSON.stringify(score))).toEqual(score);
  });
});
