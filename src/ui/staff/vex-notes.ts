import { Accidental, Beam, Dot, Parenthesis, StaveNote, Stem } from 'vexflow/core';
import type { ClefName, NotatedEvent, NoteShape, StaffBar } from '../../layout/notation/notation';

const INK = { fillStyle: 'currentColor', strokeStyle: 'currentColor' };
const DURATIONS: Readonly<Record<NoteShape, string>> = {
  whole: 'w',
  half: 'h',
  quarter: 'q',
  eighth: '8',
  sixteenth: '16',
  'thirty-second': '32',
};
/** VexFlow's keys for rests, on the middle line of each clef. */
const REST_KEYS: Readonly<Record<ClefName, string>> = { treble: 'b/4', bass: 'd/3', 'bass-8vb': 'd/3' };
/** Whole rests hang from the line above it. */
const WHOLE_REST_KEYS: Readonly<Record<ClefName, string>> = { treble: 'd/5', bass: 'f/3', 'bass-8vb': 'f/3' };
/** Length of the stems of the clave line, shorter than usual so that the count stands close. */
const CLAVE_STEM = 26;

/** One event as a VexFlow note; `clef` is null on the clave line. */
export function staveNote(event: NotatedEvent, clef: ClefName | null): StaveNote {
  const shift = (clef === 'bass-8vb' ? 1 : 0) - event.octaves;
  const rest = event.kind !== 'notes' && event.kind !== 'stroke';
  const keys =
    clef && !rest ? event.pitches.map((pitch) => `${pitch.letter.toLowerCase()}/${pitch.octave + shift}`) : [restKey(event, clef)];
  const note = new StaveNote({
    keys,
    duration: DURATIONS[event.value.shape] + (rest ? 'r' : ''),
    dots: event.value.dots,
    alignCenter: event.wholeBar,
    clef: clef === 'treble' || clef === null ? 'treble' : 'bass',
    stemDirection: event.stem === 'up' ? Stem.UP : Stem.DOWN,
  });
  note.setStyle(INK);
  note.setLedgerLineStyle({ ...INK, lineWidth: 1.4 });
  if (event.value.dots === 1) Dot.buildAndAttach([note], { all: true });
  if (clef === null && !rest) {
    note.setStemLength(CLAVE_STEM);
    // The library applies a length to beamed notes alone.
    note.getStem()?.setExtension(note.getStemExtension());
  }
  event.pitches.forEach((pitch, index) => {
    if (!rest && pitch.accidental) note.addModifier(new Accidental(pitch.accidental), index);
  });
  if (event.firstPassOnly && !event.tieIn) Parenthesis.buildAndAttach([note]);
  return note;
}

function restKey(event: NotatedEvent, clef: ClefName | null): string {
  return clef && event.value.shape === 'whole' ? WHOLE_REST_KEYS[clef] : REST_KEYS[clef ?? 'treble'];
}

/** The beams of a bar; made before drawing, so that the notes lose their flags. */
export function beamsOf(bar: StaffBar, notes: readonly StaveNote[]): Beam[] {
  return bar.beams.map((group) => new Beam(group.flatMap((i) => notes[i] ?? [])));
}
