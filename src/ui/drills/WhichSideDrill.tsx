import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { SideDrill } from '../../state/drills/side-drill';
import { DRILLS } from '../../words/drills';
import { anySeed, type OwnDrillProps } from './SeedField';

/** Which side? by ear: hear two or four bars, say which side they began on. The board stays out of sight, so that nothing tells. */
export function WhichSideDrill({ room, seed, onLeave }: OwnDrillProps) {
  const [drill, setDrill] = useState<SideDrill | null>(null);
  useEffect(() => {
    const begun = room.side(seed ?? anySeed());
    setDrill(begun);
    return () => void begun.leave();
  }, [room, seed]);
  return drill && <Question drill={drill} onLeave={onLeave} />;
}

function Question({ drill, onLeave }: { readonly drill: SideDrill; readonly onLeave: () => void }) {
  const heard = useStore(drill.store, (state) => state.heard);
  const { question, last, asked, right } = useStore(drill.store, (state) => state.drill);
  const said = last && (last.right ? DRILLS.side.right(last.question.starts) : DRILLS.side.wrong(last.question.starts));
  return (
    <section className="drill-page" aria-labelledby="side-drill">
      <h2 id="side-drill">{DRILLS.names['which side']}</h2>
      <p>{DRILLS.why['which side']}</p>
      <p className="drill-asks">
        {DRILLS.side.listen}: <strong>{DRILLS.side.sounds[question.sound]}</strong>
      </p>
      <div className="drill-row">
        <button type="button" className="key" onClick={drill.hear}>
          {heard ? DRILLS.side.again : DRILLS.side.hear}
        </button>
        <button type="button" className="key" disabled={!heard} onClick={() => drill.say(2)}>
          {DRILLS.side.two}
        </button>
        <button type="button" className="key" disabled={!heard} onClick={() => drill.say(3)}>
          {DRILLS.side.three}
        </button>
        <button type="button" className="key" onClick={onLeave}>
          {DRILLS.side.leave}
        </button>
      </div>
      <p role="status" className="drill-said">
        {said} {asked > 0 && DRILLS.side.tally(right, asked)}
      </p>
    </section>
  );
}
