import { useEffect, useState } from 'react';
import type { DrillsRoom } from '../../state/drills/drills';
import { DRILLS } from '../../words/drills';
import { useRun } from '../app/desk-context';
import { anySeed, nextSeed, SeedField } from './SeedField';

/** Lost and found: the band changes the form without a word; what it did is told only when the player asks. */
export function LostAndFound({ room, onLeave }: { readonly room: DrillsRoom; readonly onLeave: () => void }) {
  const run = useRun();
  const [seed, setSeed] = useState(anySeed);
  const [surprises, setSurprises] = useState<ReturnType<DrillsRoom['surprise']> | 'none yet'>('none yet');
  const [told, setTold] = useState(false);
  useEffect(() => () => room.endSurprise(), [room]);
  const play = (): void => {
    setTold(false);
    setSurprises(room.surprise(seed));
  };
  const reveal = (): void => {
    run({ kind: 'stop' });
    setTold(true);
  };
  const { lost } = DRILLS;
  return (
    <section className="drill-page" aria-labelledby="lost-drill">
      <h2 id="lost-drill">{DRILLS.names['lost and found']}</h2>
      <p>{DRILLS.why['lost and found']}</p>
      <div className="drill-row">
        <SeedField label={lost.number} seed={seed} onSeed={setSeed} />
        <button type="button" className="key" onClick={play}>
          {lost.play}
        </button>
        <button type="button" className="key" disabled={surprises === 'none yet' || surprises === null} onClick={reveal}>
          {lost.reveal}
        </button>
        <button
          type="button"
          className="key"
          onClick={() => {
            setSeed(nextSeed(seed));
            setSurprises('none yet');
            setTold(false);
          }}
        >
          {lost.another}
        </button>
        <button type="button" className="key" onClick={onLeave}>
          {DRILLS.side.leave}
        </button>
      </div>
      <div role="status">
        {surprises === null && <p>{lost.tooShort}</p>}
        {told && Array.isArray(surprises) && (
          <>
            <ul>
              {surprises.map(({ atBar, kind, bars }) => (
                <li key={atBar}>{kind === 'again' ? lost.again(atBar + 1, bars) : lost.dropped(atBar + 1, bars)}</li>
              ))}
              {surprises.length === 0 && <li>{lost.nothing}</li>}
            </ul>
            <p>{lost.counts}</p>
          </>
        )}
      </div>
    </section>
  );
}
