import { useCallback } from 'react';
import { playingPad } from '../../layout/figure/rhythm-pad';
import { useDesk, useRun } from '../app/desk-context';
import { RhythmPad } from '../figure/RhythmPad';

/** The pad for rhythms under the clave, meter and tempo that are set. */
export function RhythmPadGroup() {
  const run = useRun();
  const { direction, kind, tempo, ownFigure } = useDesk((state) => state.settings);
  const score = useDesk((state) => state.music?.score ?? null);
  const playing = useCallback(() => (score ? (playingPad(score)?.pad ?? null) : null), [score]);
  const sixEight = score?.meter === '6/8';
  return (
    <RhythmPad
      key={score?.meter}
      clave={{ kind: sixEight ? 'bembe' : kind, direction }}
      steps={sixEight ? 12 : 16}
      stepMillis={15_000 / tempo}
      own={ownFigure}
      playing={playing}
      onUse={(text, written) => run({ kind: 'set', settings: { ownFigure: { text, direction: written } } })}
      onOff={() => run({ kind: 'set', settings: { ownFigure: null } })}
    />
  );
}
