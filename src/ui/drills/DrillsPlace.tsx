import { useState } from 'react';
import { BOARD_DRILLS, type BoardDrillName } from '../../state/drills/board-drill';
import { DRILLS } from '../../words/drills';
import { AtSight } from './AtSight';
import { DrillCard } from './DrillCard';
import { drillsBegun } from './drills-context';
import { LostAndFound } from './LostAndFound';
import { useDrills } from './use-drills';
import { WhichSideDrill } from './WhichSideDrill';
import './drills.css';

/** The Drills place: what there is to practise, one line each; most run on the practice board, two here. */
export function DrillsPlace() {
  const room = useDrills();
  const [open, setOpen] = useState<'which side' | 'at sight' | 'lost and found' | null>(null);
  const onBoard = (name: BoardDrillName): void => {
    room?.begin(name, { seed: Math.floor(Date.now() / 1000) % 10_000 });
    drillsBegun.setState(true, true);
    window.location.hash = '#/practise';
  };
  if (room && open === 'which side') return <WhichSideDrill room={room} onLeave={() => setOpen(null)} />;
  if (room && open === 'at sight') return <AtSight room={room} onLeave={() => setOpen(null)} />;
  if (room && open === 'lost and found') return <LostAndFound room={room} onLeave={() => setOpen(null)} />;
  return (
    <div className="drills-place">
      <p>{DRILLS.intro}</p>
      <ul className="drill-list">
        <DrillCard name="which side" onBegin={() => setOpen('which side')} />
        {BOARD_DRILLS.map((name) => (
          <DrillCard key={name} name={name} disabled={room === null} onBegin={() => onBoard(name)} />
        ))}
        <DrillCard name="lost and found" onBegin={() => setOpen('lost and found')} />
        <DrillCard name="at sight" onBegin={() => setOpen('at sight')} />
      </ul>
      <p className="caption">{DRILLS.caution}</p>
    </div>
  );
}
