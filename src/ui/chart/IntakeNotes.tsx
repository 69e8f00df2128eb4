import type { Intake } from '../../state/library/intake';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { useLibraryState } from './use-library';

/** What became of the files that were given last. */
export function IntakeNotes({ library }: { readonly library: Library }) {
  const intakes = useLibraryState(library, (state) => state.intakes);
  return (
    <div aria-live="polite">
      {intakes.length > 0 && (
        <div className="notice intake">
          <ul>
            {intakes.map((intake) => (
              <li key={intake.name}>
                {sentence(intake)}
                {intake.kind === 'taken in' && intake.leftOut.length > 0 && <LeftOut sentences={intake.leftOut} />}
              </li>
            ))}
          </ul>
          <button type="button" className="plain" onClick={() => library.store.setState({ intakes: [] })}>
            {LIBRARY_WORDS.understood}
          </button>
        </div>
      )}
    </div>
  );
}

function LeftOut({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <>
      <p className="caption">{LIBRARY_WORDS.leftOut}</p>
      <ul className="left-out">
        {[...new Set(sentences)].map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </>
  );
}

function sentence(intake: Intake): string {
  if (intake.kind === 'refused') return LIBRARY_WORDS.refused(intake.name, intake.sentence);
  if (intake.kind !== 'taken in') return intake.name;
  return intake.faults === 0 ? LIBRARY_WORDS.takenIn(intake.name) : LIBRARY_WORDS.takenInWithFaults(intake.name, intake.faults);
}
