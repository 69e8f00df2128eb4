import { FIGURE_SCREEN } from '../../words/figure-screen';
import { usePlaying, useRun } from '../app/desk-context';

/** The way out of an open section, there only while one goes round. */
export function CueButton() {
  const run = useRun();
  const vamp = usePlaying((state) => state.vamp);
  if (vamp === null) return null;
  if (vamp === 'holding') {
    return (
      <button type="button" className="key key-cue" title={FIGURE_SCREEN.cueHint} onClick={() => run({ kind: 'cue' })}>
        {FIGURE_SCREEN.cue}
      </button>
    );
  }
  return (
    <p className="cue-said" role="status">
      {vamp === 'leaving' ? FIGURE_SCREEN.leaving : FIGURE_SCREEN.oneMore}
    </p>
  );
}
