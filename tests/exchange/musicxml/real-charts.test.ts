import { describe, expect, it } from 'vitest';
import { readMusicXml } from '../../../src/exchange/musicxml/read-musicxml';
import { writeMusicXml } from '../../../src/exchange/musicxml/write-musicxml';
import { writeMxl } from '../../../src/exchange/musicxml/write-mxl';
import { readChart } from '../../../src/music/chart/read';
import { unfold } from '../../../src/music/chart/unfold';
import { arrange } from '../../../src/music/score';
import { attributes, bytesOf, file, measure } from './lead-sheet-file';

/** Charts in the public domain or traditional, with their sources; key by its fifths, bars as printed. A bar without a symbol holds the one before. */
const CHARTS: readonly {
  readonly title: string;
  readonly source: string;
  readonly fifths: number;
  readonly mode: string;
  readonly bars: string;
}[] = [
  {
    title: 'Jeanie with the Light Brown Hair (S. Foster, 1854), bars 2-17',
    source: 'chord symbols encoded in the music21 corpus lead sheet, marked public domain',
    fifths: -1,
    mode: 'major',
    bars: 'F | Bb | F C | F | F | Bb | F G7 | C | F | Bb | F C | F | G7 | C F | C G7 | C',
  },
  {
    title: 'St. Louis Blues (W. C. Handy, 1914), verse',
    source: 'J. Bottorff, song sheet "Saint Louis Blues"',
    fifths: -1,
    mode: 'major',
    bars: 'F7 | Bb | F | F7 | Bb | Bb | F | F | C7 | C7 | F | F',
  },
  {
    title: 'Viva Dios, viva la Virgen (traditional, Chile), introduction',
    source: 'chord sheet of the traditional parabienes, cancioneros.com',
    fifths: 1,
    mode: 'major',
    bars: 'G | G | D7 | D7 | G | C | D7 | G D7 | G D7 | G',
  },
  {
    title: 'La Folia (17th century ground)',
    source: 'later folia progression, R. Hudson, New Grove, "Folia" (from memory)',
    fifths: -1,
    mode: 'minor',
    bars: 'Dm | A7 | Dm | C | F | C | Dm | A7 | Dm | A7 | Dm | C | F | C | Dm A7 | Dm',
  },
  {
    title: 'La Bamba (traditional, Veracruz), loop',
    source: 'song sheet giving D G A; bar layout from memory',
    fifths: 2,
    mode: 'major',
    bars: 'D G | A',
  },
  {
    title: 'Andalusian cadence',
    source: 'traditional Spanish descending tetrachord (from memory)',
    fifths: 0,
    mode: 'minor',
    bars: 'Am | G | F | E7',
  },
  {
    title: 'Canon ground (J. Pachelbel, c. 1690)',
    source: 'bass and harmony of the ground, two chords a bar (from memory)',
    fifths: 2,
    mode: 'major',
    bars: 'D A | Bm F#m | G D | G A',
  },
];

/** Every bar as it sounds with its chords: tick in the bar and symbol. */
function heard(text: string): string[] {
  const read = readChart(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return unfold(read.value).bars.map((bar) => bar.chords.map(({ tick, symbol }) => `${tick - bar.tick} ${symbol}`).join(', '));
}

describe('real charts as MusicXML', () => {
  it.each(CHARTS)('$title keeps every chord symbol and bar, in and out and in again', ({ title, fifths, mode, bars }) => {
    const printed = bars.split(' | ').map((bar) => bar.split(' '));
    const xml = file(
      title,
      printed.map((chords, i) => measure(i + 1, chords, i === 0 ? { first: attributes(fifths, mode) } : {})).join(''),
    );
    const expected = printed.map((chords) => chords.map((chord, i) => `${i * 960} ${chord}`).join(', '));
    const first = readMusicXml(bytesOf(xml), 'chart.musicxml');
    if (!first.ok) throw new Error(JSON.stringify(first.faults));
    expect(first.value.title).toBe(title);
    expect(first.value.notTaken.map(({ code }) => code)).toEqual(['notes']);
    expect(heard(first.value.text)).toEqual(expected);

    const chart = readChart(first.value.text);
    if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
    const score = arrange(chart.value, { closed: false });
    const again = readMusicXml(writeMxl(writeMusicXml(score)), 'chart.mxl');
    if (!again.ok) throw new Error(JSON.stringify(again.faults));
    expect(heard(again.value.text)).toEqual(expected);
    const back = readChart(again.value.text);
    expect(back.ok && [back.value.key, back.value.meter, back.value.title, back.value.clave, back.value.style]).toEqual([
      chart.value.key,
      chart.value.meter,
      chart.value.title,
      chart.value.clave,
      chart.value.style,
    ]);
  });

  it('holds the chord of a bar without a symbol', () => {
    const read = readMusicXml(
      bytesOf(
        file('Held', measure(1, ['F'], { first: attributes(-1, 'major') }) + measure(2, []) + measure(3, ['F', 'C']) + measure(4, [])),
      ),
      'x.xml',
    );
    expect(read.ok && read.value.text).toContain('| F | % | F C | / / / / |');
  });
});
