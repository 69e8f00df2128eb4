import { describe, expect, it } from 'vitest';
import { GRID_WORDS } from '../../src/words/grid';
import { SHAPE_WORDS } from '../../src/words/hand-shape';

describe('the words of the grid', () => {
  it('name a cell as the accessibility plan asks', () => {
    const sentence = GRID_WORDS.cell({
      bar: 3,
      side: 2,
      count: '&',
      beat: '2',
      chord: null,
      clave: true,
      hit: false,
      right: ['Eb4', 'Eb5'],
      left: [],
      bass: [],
      percussion: [],
    });
    expect(sentence).toBe('bar 3, 2-side, beat 2 and, clave stroke, right hand E flat 4 and 5');
  });

  it('name the left hand and the bass once where they play the same, what comes a sixteenth later, and the stroke of a drum', () => {
    const sentence = GRID_WORDS.cell({
      bar: 1,
      side: 3,
      count: '4',
      beat: '4',
      chord: null,
      clave: false,
      hit: false,
      right: ['G5'],
      left: ['E2'],
      bass: ['E2'],
      percussion: [
        { instrument: 'guiro', stroke: 'long scrape' },
        { instrument: 'cascara', stroke: 'plain' },
      ],
      later: [{ hand: 'right', names: ['B5'] }],
      marks: ['double-notes'],
    });
    expect(sentence).toBe(
      'bar 1, 3-side, beat 4, right hand G 5, left hand and bass E 2, a sixteenth later right hand B 5, double notes, güiro long scrape and cáscara',
    );
  });

  it('say notes, with double signs', () => {
    expect(GRID_WORDS.spokenNote('F#5')).toBe('F sharp 5');
    expect(GRID_WORDS.spokenNote('Bbb4')).toBe('B double flat 4');
    expect(GRID_WORDS.spokenNotes(['G5', 'Bb5', 'D6'])).toBe('G 5, B flat 5 and D 6');
  });

  it('say a shape and how it came about', () => {
    expect(SHAPE_WORDS.shape(['C#5', 'C#6'], '3', 'A7')).toBe('C♯ octave, third of A7');
    expect(SHAPE_WORDS.shape(['C#5', 'G5', 'C#6'], '3', 'A7b9')).toBe('C♯ octave with G, third of A7♭9');
    expect(SHAPE_WORDS.motion(['G5'], [{ name: 'Bb5', semitones: -1 }])).toBe('G stays, B♭ a half step down');
    expect(
      SHAPE_WORDS.motion(
        [],
        [
          { name: 'A5', semitones: 2 },
          { name: 'C6', semitones: 2 },
        ],
      ),
    ).toBe('both a whole step up');
    expect(SHAPE_WORDS.motion(['G5'], [{ name: 'E5', semitones: null }])).toBe('G stays, E is new');
  });
});
