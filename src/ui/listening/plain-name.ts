import { printedNote } from '../../words/spoken';

/** The usual spellings of the twelve notes; what is played has no chord that would choose another. */
const NAMES = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

/** A played note by name: `plainName(61)` is C♯. */
export const plainName = (midi: number): string => printedNote(NAMES[midi % 12] ?? 'C');
