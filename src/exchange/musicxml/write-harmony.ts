import type { SoundingBar } from '../../music/chart/chart';
import { kindOf } from './chord-kinds';
import { element, type Xml } from './xml';

const ALTERS: Readonly<Record<string, number>> = { '': 0, '#': 1, '##': 2, b: -1, bb: -2 };

/** `root` or `bass` of a note name such as `Eb`: step, and alter where there is one. */
const namedNote = (part: 'root' | 'bass', name: string): Xml => {
  const alter = ALTERS[name.slice(1)] ?? 0;
  return element(part, [element(`${part}-step`, name.charAt(0)), alter === 0 ? undefined : element(`${part}-alter`, alter)]);
};

/**
 * A chord symbol, or N.C., as a `harmony` element. The kind's `text` is the suffix as typed, so that a program which only prints it is right;
 * the degrees say the same for programs that play, and are marked as not to be printed a second time. `offset` is in divisions from the notes that follow.
 * Source: MusicXML 4.0, `harmony`, `kind`, `degree`; a root is required even for no chord, with its text empty.
 */
export function harmonyElement({ chord, symbol }: Pick<SoundingBar['chords'][number], 'chord' | 'symbol'>, offset: number): Xml {
  const moved = offset === 0 ? undefined : element('offset', offset);
  if (chord === null) {
    const root = element('root', [element('root-step', 'C', { text: '' })]);
    return element('harmony', [root, element('kind', 'none', { text: symbol }), moved], { placement: 'above' });
  }
  const { kind, changes } = kindOf(chord.tones.map(({ degree }) => degree));
  return element(
    'harmony',
    [
      namedNote('root', chord.root),
      element('kind', kind, { text: chord.suffix }),
      chord.bass === null ? undefined : namedNote('bass', chord.bass),
      ...changes.map(({ value, alter, type }) =>
        element('degree', [element('degree-value', value), element('degree-alter', alter), element('degree-type', type)], {
          'print-object': 'no',
        }),
      ),
      moved,
    ],
    { placement: 'above' },
  );
}
