import { useEffect, useState } from 'react';
import type { LostDrill } from '../../state/drills/lost-drill';
import { DRILLS } from '../../words/drills';
import { useRun } from '../app/desk-context';
import { anySeed, nextSeed, type OwnDrillProps, SeedField } from './SeedField';

/** Lost and found: the band changes the form without a word; what it did is told only when the player asks. */
export function LostAndFound({ room, seed: given, onLeave }: OwnDrillProps) {
  const run = useRun();
  const [seed, setSeed] = useState(() => given ?? anySeed());
  const [drill, setDrill] = useState<LostDrill | 'too short' | null>(null);
  const [told, setTold] = useState(false);
  useEffect(() => () => room.endSurprise(), [room]);
  const play = (): void => {
    setTold(false);
    setDrill(room.surprise(seed) ?? 'too short');
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
        <button type="button" className="key" disabled={drill === null || drill === 'too short' || told} onClick={reveal}>
          {lost.reveal}
        </button>
        <button
          type="button"
          className="key"
          onClick={() => {
            setSeed(nextSeed(seed));
            setDrill(null);
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
        {drill === 'too short' && <p>{lost.tooShort}</p>}
        {told && drill !== null && drill !== 'too short' && (
          <Told key={drill.seed} drill={drill} onRate={(back, of) => room.rateSurprises(back, of, drill.seed)} />
        )}
      </div>
    </section>
  );
}

/** What the band did, and in how many bars the player was back: as it was heard, or by the player's own count. */
function Told({ drill, onRate }: { readonly drill: LostDrill; readonly onRate: (back: number, of: number) => void }) {
  const { surprises } = drill;
  const [rated, setRated] = useState(false);
  // The last stretch is judged a moment after the band stops.
  const [found, setFound] = useState(drill.found);
  useEffect(() => {
    const timer = setTimeout(() => setFound(drill.found()), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [drill]);
  const judged = found.length > 0;
  const back = found.filter((bars) => bars !== null && bars <= SOON_BARS).length;
  const rate = (times: number): void => {
    onRate(times, judged ? found.length : surprises.length);
    setRated(true);
  };
  const { lost } = DRILLS;
  return (
    <>
      <ul>
        {surprises.map(({ atBar, kind, bars }, index) => (
          <li key={atBar}>
            {kind === 'again' ? lost.again(atBar + 1, bars) : lost.dropped(atBar + 1, bars)}{' '}
            {index < found.length && <b>{lost.back(found[index] ?? null)}</b>}
          </li>
        ))}
        {surprises.length === 0 && <li>{lost.nothing}</li>}
      </ul>
      {surprises.length > 0 && <p>{judged ? lost.tally(back, found.length) : lost.counts}</p>}
      {surprises.length > 0 && (
        <div className="drill-row">
          {rated && <p>{lost.written}</p>}
          {!rated && judged && (
            <button type="button" className="key" onClick={() => rate(back)}>
              {lost.write}
            </button>
          )}
          {!rated && !judged && (
            <fieldset className="drill-rate">
              <legend>{lost.ask}</legend>
              <button type="button" className="key" onClick={() => rate(surprises.length)}>
                {lost.yes}
              </button>
              <button type="button" className="key" onClick={() => rate(0)}>
                {lost.no}
              </button>
            </fieldset>
          )}
        </div>
      )}
    </>
  );
}

/** Back within so many bars counts as found. */
const SOON_BARS = 3;
const SETTLED_MS = 1200;
