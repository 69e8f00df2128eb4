import { useEffect, useState } from 'react';
import { CHANGES } from '../../words/changes';
import { printedKey } from '../../words/spoken';
import { useDesk, usePlaying } from '../app/desk-context';

/** How long a message about a change stays in sight. */
const SHOWN_MS = 6000;

/** Says politely what a change made while playing does and from which bar it is heard. Nothing is said as music goes by. */
export function Announcer() {
  const announcement = useDesk((state) => state.announcement);
  const settings = useDesk((state) => state.settings);
  const key = useDesk((state) => state.music?.score.key);
  const stopped = usePlaying((state) => state.transport.kind === 'stopped');
  const [gone, setGone] = useState(0);
  const id = announcement?.id ?? 0;
  useEffect(() => {
    if (id === 0) return;
    const timer = setTimeout(() => setGone(id), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [id]);
  const shown = announcement !== null && !stopped && id > gone;
  const facts = shown && key ? { ...settings, thing: announcement.thing, key: printedKey(key) } : null;
  return (
    <p className="announcer" role="status">
      {facts && shown && CHANGES.sentence(facts, announcement.fromBar)}
    </p>
  );
}
