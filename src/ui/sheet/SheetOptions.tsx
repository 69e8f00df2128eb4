import { FINGERINGS } from '../../layout/notation/fingering';
import { HABITS } from '../../layout/notation/notation';
import { pencilList } from '../../layout/sheet/pencil-list';
import { EXTENTS, SHEET_HANDS, SHEET_KINDS, SHEET_PARTS, type SheetChoice, TASKS } from '../../layout/sheet/sheet-choice';
import type { Score } from '../../music/score';
import { type SheetNotes, TEACHER_LENGTH } from '../../state/sheet/sheet-notes';
import { SHEET_OPTION_WORDS } from '../../words/sheet-options';
import { ChoiceRow } from './ChoiceRow';
import { LineCounts } from './LineCounts';

/** What the choices beside a sheet are given. */
export interface SheetOptionsProps {
  readonly choice: SheetChoice;
  readonly onChoose: (change: Partial<SheetChoice>) => void;
  readonly notes: SheetNotes;
  readonly onNote: (change: Partial<SheetNotes>) => void;
  readonly score: Score;
  readonly looped: boolean;
  readonly refused: string | null;
}

/** The kind of sheet, and what goes on it; what a kind has no use for is not shown. */
export function SheetOptions({ choice, onChoose, notes, onNote, score, looped, refused }: SheetOptionsProps) {
  const words = SHEET_OPTION_WORDS;
  const { kind } = choice;
  return (
    <div className="sheet-options">
      <ChoiceRow name={words.kind} values={SHEET_KINDS} labels={words.kinds} value={kind} onChange={(to) => onChoose({ kind: to })} />
      <p className="sheet-kind-hint">{words.kindHints[kind]}</p>
      {refused !== null && <p role="alert">{words.notKept(refused)}</p>}
      {kind === 'list' ? (
        <LineCounts list={pencilList(score)} breaks={notes.breaks} onBreaks={(breaks) => onNote({ breaks })} />
      ) : (
        <details>
          <summary>{words.what}</summary>
          {kind === 'worksheet' && (
            <>
              <ChoiceRow
                name={words.task}
                word="crossed"
                values={TASKS}
                labels={words.tasks}
                value={choice.task}
                onChange={(task) => onChoose({ task })}
              />
              <Tick label={words.answers} on={choice.answers} onChange={(answers) => onChoose({ answers })} />
            </>
          )}
          <ChoiceRow
            name={words.extent}
            values={EXTENTS}
            labels={words.extents}
            value={choice.extents[kind]}
            onChange={(extent) => onChoose({ extents: { ...choice.extents, [kind]: extent } })}
          />
          {choice.extents[kind] === 'loop' && !looped && <p>{words.noLoop}</p>}
          <ChoiceRow
            name={words.hands}
            values={kind === 'lesson' ? SHEET_HANDS : SHEET_HANDS.filter((hands) => hands !== 'apart')}
            labels={words.hand}
            value={choice.hands}
            onChange={(hands) => onChoose({ hands })}
          />
          <ChoiceRow
            name={words.habit}
            word="tempo"
            values={HABITS}
            labels={words.habits}
            value={choice.habit}
            onChange={(habit) => onChoose({ habit })}
          />
          <ChoiceRow
            name={words.fingering}
            values={FINGERINGS}
            labels={words.fingerings}
            value={choice.fingering}
            onChange={(fingering) => onChoose({ fingering })}
          />
          <div className="sheet-ticks">
            {SHEET_PARTS.filter((part) => isOf(kind, part)).map((part) => (
              <Tick
                key={part}
                label={words.parts[part]}
                on={choice.parts[part]}
                onChange={(on) => onChoose({ parts: { ...choice.parts, [part]: on } })}
              />
            ))}
          </div>
        </details>
      )}
      {kind !== 'list' && kind !== 'worksheet' && choice.parts.teacher && (
        <label className="sheet-teacher-field">
          {words.teacherText}
          <textarea
            rows={2}
            maxLength={TEACHER_LENGTH}
            value={notes.teacher}
            onChange={(event) => onNote({ teacher: event.target.value })}
          />
        </label>
      )}
    </div>
  );
}

/** Parts that a kind of sheet can have. */
const isOf = (kind: SheetChoice['kind'], part: (typeof SHEET_PARTS)[number]): boolean =>
  kind === 'lesson' ||
  part === 'count' ||
  part === 'bass' ||
  (kind === 'levels' && (part === 'ladder' || part === 'keys' || part === 'teacher'));

function Tick({ label, on, onChange }: { readonly label: string; readonly on: boolean; readonly onChange: (on: boolean) => void }) {
  return (
    <label>
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  );
}
