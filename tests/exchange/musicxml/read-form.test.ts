import { describe, expect, it } from 'vitest';
import { readMusicXml } from '../../../src/exchange/musicxml/read-musicxml';
import { readChart } from '../../../src/music/chart/read';
import { unfold } from '../../../src/music/chart/unfold';
import { attributes, bytesOf, file, measure } from './lead-sheet-file';

const barline = (location: string, inside: string): string => `<barline location="${location}">${inside}</barline>`;
const repeat = (direction: string, times = ''): string => `<repeat direction="${direction}"${times}/>`;
const ending = (number: string, type: string): string => `<ending number="${number}" type="${type}"/>`;
const direction = (type: string, sound = ''): string => `<direction><direction-type>${type}</direction-type>${sound}</direction>`;
const words = (text: string, sound = ''): string => direction(`<words>${text}</words>`, sound);
const mark = (text: string): string => direction(`<rehearsal>${text}</rehearsal>`);

/** A file whose bars have the chords C, D, E … one a bar, with what else stands in each. */
function read(bars: readonly { readonly first?: string; readonly last?: string; readonly chords?: readonly string[] }[]) {
  const measures = bars.map(({ chords, ...more }, i) =>
    measure(i + 1, chords ?? ['CDEFGAB'.charAt(i % 7)], { ...more, first: (i === 0 ? attributes(0, 'major') : '') + (more.first ?? '') }),
  );
  const result = readMusicXml(bytesOf(file('Form', measures.join(''))), 'form.musicxml');
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  const chart = readChart(result.value.text);
  if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
  const sounding = unfold(chart.value)
    .bars.map(({ chords }) => chords[0]?.symbol)
    .join(' ');
  return { text: result.value.text, sounding, left: result.value.notTaken.map(({ code }) => code).filter((code) => code !== 'notes') };
}

describe('the form of a score file', () => {
  it('takes repeats, their times, and one that is opened by the start of the piece', () => {
    const { text, sounding, left } = read([
      {},
      { last: barline('right', repeat('backward')) },
      { first: barline('left', repeat('forward')) },
      { last: barline('right', repeat('backward', ' times="3"')) },
    ]);
    expect(text).toContain('|: C | D :|');
    expect(text).toContain('|: E | F :| x3');
    expect(sounding).toBe('C D C D E F E F E F');
    expect(left).toEqual([]);
  });

  it('takes endings, a bracket of several bars and of several passes', () => {
    const { sounding, left } = read([
      { first: barline('left', repeat('forward')) },
      { first: barline('left', ending('1, 2', 'start')), last: barline('right', ending('1, 2', 'stop') + repeat('backward')) },
      { first: barline('left', ending('3', 'start')) },
      { last: barline('right', ending('3', 'discontinue')) },
      {},
    ]);
    expect(sounding).toBe('C D C D C E F G');
    expect(left).toEqual([]);
  });

  it('takes D.S. al Coda by its signs and words, as programs without sound attributes write it', () => {
    const { sounding, left } = read([
      {},
      { first: direction('<segno/>') },
      { first: direction('<coda/>') },
      { last: words('D.S. al Coda') },
      { first: direction('<coda/>') },
    ]);
    expect(sounding).toBe('C D E F D E G');
    expect(left).toEqual([]);
  });

  it('takes D.C. al Fine by what sound says', () => {
    const { sounding } = read([
      {},
      { last: words('Fine', '<sound fine="yes"/>') },
      {},
      { last: words('D.C. al Fine', '<sound dacapo="yes"/>') },
    ]);
    expect(sounding).toBe('C D E F C D');
  });

  it('plays on to its own bar after a D.C. that says no more', () => {
    const { sounding } = read([{}, {}, { last: words('D.C.') }]);
    expect(sounding).toBe('C D E C D E');
  });

  it('makes sections of rehearsal marks, and a form line where one comes back the same', () => {
    const twice = [
      { first: mark('A') },
      {},
      { first: mark('B'), chords: ['G'] },
      { first: mark('A'), chords: ['C'] },
      { chords: ['D'] },
      { first: mark('A'), chords: ['F'] },
    ];
    const { text, sounding, left } = read(twice);
    expect(text).toContain('form: A, B, A, A 2');
    expect(sounding).toBe('C D G C D F');
    expect(left.sort()).toEqual(['form order', 'same mark']);
  });

  it('keeps a repeat whole where a mark stands inside it, and says so', () => {
    const { sounding, left } = read([
      { first: mark('A') + barline('left', repeat('forward')) },
      { first: mark('B') },
      { last: barline('right', repeat('backward')) },
    ]);
    expect(sounding).toBe('C D E C D E');
    expect(left).toEqual(['mark inside a repeat']);
  });

  it('leaves out what does not lead anywhere, and says so', () => {
    expect(read([{}, { last: words('D.S. al Coda') }]).left).toEqual(['jumps']);
    expect(read([{ first: barline('left', repeat('forward')) }, {}]).left).toEqual(['open repeat']);
    const odd = read([
      { first: barline('left', repeat('forward')) },
      { first: barline('left', ending('2', 'start')), last: barline('right', ending('2', 'stop') + repeat('backward')) },
      { first: barline('left', ending('5', 'start')) },
    ]);
    expect([odd.left, odd.sounding]).toEqual([['repeats'], 'C D E']);
  });
});

describe('what a bar of a chart cannot hold', () => {
  it('moves a chord from between two beats, and says so', () => {
    const early = `<measure number="1">${attributes(0, 'major')}<harmony><root><root-step>C</root-step></root><kind>major</kind></harmony><note><rest/><duration>7</duration></note><harmony><root><root-step>F</root-step></root><kind text="7">dominant</kind></harmony><note><rest/><duration>1</duration></note></measure><measure number="2"><note><rest measure="yes"/><duration>8</duration></note></measure>`;
    const result = readMusicXml(bytesOf(file('Early', early)), 'x.xml');
    expect(result.ok && result.value.text).toContain('| C | F7 |');
    expect(result.ok && result.value.notTaken).toEqual([{ code: 'chord moved', bar: 1, detail: { chord: 'F7' } }]);
  });

  it('takes a short first bar as a pickup, 2/4 as a short bar, key and tempo of a section, N.C., and moves a transposing part to concert pitch', () => {
    const rest = (duration: number): string => `<note><rest/><duration>${duration}</duration></note>`;
    const chord = (step: string): string =>
      `<harmony><root><root-step>${step}</root-step></root><kind text="m7">minor-seventh</kind></harmony>`;
    const none = '<harmony><root><root-step text="">C</root-step></root><kind text="N.C.">none</kind></harmony>';
    const measures = [
      `<measure number="0" implicit="yes">${attributes(2, 'major').replace('</attributes>', '<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose></attributes>')}<sound tempo="170"/>${rest(2)}</measure>`,
      `<measure number="1">${chord('E')}${rest(4)}${none}${rest(4)}</measure>`,
      `<measure number="2"><attributes><time><beats>2</beats><beat-type>4</beat-type></time></attributes>${chord('B')}${rest(4)}</measure>`,
      `<measure number="3">${mark('B')}<attributes><key><fifths>4</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time></attributes><sound tempo="200"/>${chord('F')}${rest(8)}</measure>`,
    ];
    const result = readMusicXml(bytesOf(file('Trumpet', measures.join(''))), 'x.xml');
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    expect(result.value.text).toBe(
      'title: Trumpet\nkey: C\nclave: 2-3 son\ntempo: half = 85\nstyle: salsa\n\n[Start]\n| (pickup) N.C. | Dm7 N.C. | (2/4) Am7 |\n\n[B, key: D, tempo: half = 100]\n| Ebm7 |\n',
    );
    expect(result.value.notTaken.map(({ code }) => code)).toEqual(['transposed']);
  });
});
