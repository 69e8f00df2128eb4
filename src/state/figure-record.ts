import { readFigure } from '../music/chart/read-values';
import { CELLS } from '../music/montuno/cells';
import type { FigureEdit } from '../music/montuno/edits';
import { PATTERN_IDS } from '../music/percussion/patterns';
import type { PercussionChoice } from '../music/percussion/percussion';
import { fieldsOf, oneOf, whole } from './saved-fields';
import type { CellPair, OwnFigure } from './settings';

/** More steps than a bar of any meter has, and more bars than a form may have. */
const MOST_STEPS = 16;
const MOST_BARS = 100_000;
/** Edits kept of a record; more were never made by hand. */
const MOST_EDITS = 2_000;

/** A pair of cells out of a saved record, or null when it names none. */
export function cellsFrom(saved: unknown): CellPair | null {
  const fields = fieldsOf(saved);
  const onSide = (side: 2 | 3, id: unknown) => CELLS.find((row) => row.side === side && row.id === id)?.id;
  const two = onSide(2, fields.two);
  const three = onSide(3, fields.three);
  return two && three ? { two, three } : null;
}

/** A rhythm of the player's own out of a saved record, or null. */
export function ownFigureFrom(saved: unknown): OwnFigure | null {
  const { text, direction: written } = fieldsOf(saved);
  const direction = oneOf(['2-3', '3-2'], written);
  if (typeof text !== 'string' || direction === null) return null;
  const four = readFigure('4/4')(text);
  const read = four.ok ? four : readFigure('6/8')(text);
  return read.ok ? { text: read.value, direction } : null;
}

/** Which percussion plays, out of a saved record, or null; patterns it does not know are left out. */
export function percussionFrom(saved: unknown): PercussionChoice | null {
  if (Array.isArray(saved)) return PATTERN_IDS.filter((id) => saved.includes(id));
  return oneOf(['by style', 'none'], saved);
}

/** The good ones of saved edits, in their order; null when there is no list. */
export function editsFrom(saved: unknown): readonly FigureEdit[] | null {
  return Array.isArray(saved) ? saved.slice(0, MOST_EDITS).flatMap((edit) => editFrom(edit) ?? []) : null;
}

function editFrom(saved: unknown): FigureEdit | null {
  const fields = fieldsOf(saved);
  const bar = whole(fields.bar, 0, MOST_BARS);
  const step = whole(fields.step, 0, MOST_STEPS - 1);
  if (bar === null || step === null) return null;
  const side = oneOf([2, 3] as const, fields.side);
  const at = { bar, step, ...(side === null ? {} : { side }) };
  switch (fields.change) {
    case 'off':
      return { ...at, change: 'off' };
    case 'on': {
      const as = oneOf(['octave', 'inner'], fields.as);
      return as && { ...at, change: 'on', as };
    }
    case 'pitch': {
      const semitones = whole(fields.semitones, -88, 88);
      return semitones === null ? null : { ...at, change: 'pitch', semitones };
    }
    case 'length': {
      const steps = whole(fields.steps, 1, MOST_STEPS);
      return steps === null ? null : { ...at, change: 'length', steps };
    }
    default:
      return null;
  }
}
