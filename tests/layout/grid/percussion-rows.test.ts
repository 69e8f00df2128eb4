import { describe, expect, it } from 'vitest';
import { frameOf } from '../../../src/layout/grid/frame';
import { mostRows, PULSE, rowsOfCard } from '../../../src/layout/grid/percussion-choice';
import { percussionRows, shapeOf } from '../../../src/layout/grid/percussion-rows';
import { stepGrid } from '../../../src/layout/step-grid';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { PERCUSSION_INSTRUMENTS, PERCUSSION_PATTERNS } from '../../../src/music/percussion/patterns';
import { arrange } from '../../../src/music/score';
import { GRID_WORDS } from '../../../src/words/grid';

const chart = readChart(DEMO_BOOK[0]?.text ?? '');
if (!chart.ok) throw new Error('the demo chart must be read');
const grid = stepGrid(arrange(chart.value));
const verse = grid.cards[0];
if (!verse) throw new Error('the demo chart must have a card');

describe('the rows of the percussion', () => {
  it('show what states the clave first and tell the rest', () => {
    const { shown, told } = rowsOfCard(verse, 2, false);
    expect(shown[0]).toBe('cascara');
    expect(shown).toHaveLength(2);
    expect([...shown, ...told].sort()).toEqual(
      [...new Set(verse.panels.flatMap((panel) => panel.percussion.map((row) => row.name)))].sort(),
    );
  });

  it('begin with the pulse when it sounds, on beats 1 and 3', () => {
    const panel = verse.panels[0];
    if (!panel) throw new Error('a card has a panel');
    const { shown } = rowsOfCard(verse, 3, true);
    const [pulse] = percussionRows(panel, frameOf(false, 0, 1, { rows: 3 }), shown);
    expect(shown[0]).toBe(PULSE);
    expect(pulse?.strokes.map((stroke) => stroke.step)).toEqual([0, 4]);
  });

  it('draw the cáscara of the timbales sheet on the right sides', () => {
    // Published: timbales pattern sheet ("Basic Patterns"), 3-side x.xx.. as typed here: accents capital.
    const sheet = { 3: 'X.xX.X.x', 2: 'X.X.xX.x' } as const;
    const frame = frameOf(false, 0, 1, { rows: 2 });
    for (const panel of verse.panels) {
      const [row] = percussionRows(panel, frame, ['cascara']);
      const drawn = Array.from({ length: 8 }, (_, step) => {
        const stroke = row?.strokes.find((each) => each.step === step);
        return stroke ? (stroke.shape === 'accent' ? 'X' : 'x') : '.';
      });
      expect(drawn.join('')).toBe(sheet[panel.side]);
    }
  });

  it('lie inside the frame, under the bass, one under the other', () => {
    const frame = frameOf(true, 0, 1, { rows: 3 });
    const { bass } = frame.lanes;
    expect(frame.rows.map((row) => row.top)).toEqual([0, 1, 2].map((at) => bass.top + bass.height + at * (frame.rows[0]?.height ?? 0)));
    expect((frame.rows.at(-1)?.top ?? 0) + (frame.rows.at(-1)?.height ?? 0)).toBe(frame.height);
    expect(mostRows(grid.cards, true)).toBe(mostRows(grid.cards, false) + 1);
  });

  it('have a name for people for every instrument, as its patterns write it', () => {
    // A pattern is named after its instrument or after what is played on it; accents must agree where the word is the same.
    const plain = (word: string) => word.normalize('NFD').replace(/\p{M}/gu, '');
    for (const instrument of PERCUSSION_INSTRUMENTS) {
      const name = GRID_WORDS.instrumentName(instrument);
      const written = PERCUSSION_PATTERNS.filter((pattern) => pattern.instrument === instrument).flatMap((pattern) =>
        pattern.name.split(/[ ,]+/),
      );
      for (const word of name.split(' ')) for (const other of written) if (plain(other) === plain(word)) expect(other).toBe(word);
    }
  });

  it('tell accents, open and slapped strokes by shape', () => {
    expect(['accent', 'mouth', 'open low', 'slap', 'muffled', 'heel', 'neck'].map(shapeOf)).toEqual([
      'accent',
      'accent',
      'open',
      'slap',
      'slap',
      'plain',
      'plain',
    ]);
  });
});
