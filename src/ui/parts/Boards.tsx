import { useMemo } from 'react';
import type { Score } from '../../music/score';
import type { Heard } from '../../state/ports';
import { PARTS_WORDS } from '../../words/parts';
import type { PractiseBoardProps } from '../practise/board-props';
import { PractiseBoard } from '../practise/PractiseBoard';

const nothing = (): void => undefined;

/** The board in the states that it has: at rest, sounding, counting in, with percussion and pulse, on an open vamp, as an exercise, with changes by hand, looped. */
export function Boards({ score }: { readonly score: Score }) {
  const states = useMemo((): readonly (readonly [string, Partial<PractiseBoardProps>])[] => {
    const heardAt =
      (tick: number, countIn: number | null = null) =>
      (): Heard => ({ tick, pass: 1, countIn, performance: {} as Heard['performance'] });
    return [
      ['at rest', {}],
      ['sounding', { playing: true, heard: heardAt(1700) }],
      ['counting in', { playing: true, heard: heardAt(0, 2.5) }],
      ['percussion and pulse', { showPercussion: 'always' }],
      ['open vamp', { playing: true, heard: heardAt(200), vamp: 'holding' }],
      ['exercise', { banner: PARTS_WORDS.why }],
      [
        'changed by hand, looped, left hand silent',
        { edits: [{ bar: 0, step: 7 }], loop: { fromBar: 0, toBar: 4 }, silent: ['piano left'] },
      ],
    ];
  }, []);
  return (
    <>
      <h2>{PARTS_WORDS.board}</h2>
      {states.map(([name, state]) => (
        <section key={name} aria-label={name}>
          <h3>{name}</h3>
          <PractiseBoard
            score={score}
            heard={() => null}
            playing={false}
            cursorBar={0}
            loop={null}
            why={() => PARTS_WORDS.why}
            onStartAt={nothing}
            onStroke={nothing}
            onLoop={nothing}
            {...state}
          />
        </section>
      ))}
    </>
  );
}
