import { useCallback } from 'react';
import { playingPad } from '../../layout/figure/rhythm-pad';
import { useDesk, useRun } from '../app/desk-context';
import { RhythmPad } from '../figure/RhythmPad';

/** The pad for rhythms under the clave and tempo that are set. In 6/8, where rhythms are known by name only, it is not shown. */
export function RhythmPadGroup() {
  const run = useRun();
  const { direction, kind, tempo } = useDesk((state) => state.settings);
  const score = useDesk((state) => state.music?.score ?? null);
  const playing = useCallback(() => (score ? (playingPad(score)?.pad ?? null) : null), [score]);
  if (score?.meter !== '4/4') return null;
  return (
    <RhythmPad
      clave={{ kind, direction }}
      stepMillis={15_000 / tempo}
      playing={playing}
      onUse={(text, written) => run({ kind: 'set', settings: { ownFigure: { text, direction: written } } })}
    />
  );
}
