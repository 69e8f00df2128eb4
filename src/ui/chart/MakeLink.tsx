import { useId, useState } from 'react';
import type { LinkRoom } from '../../state/link/link-room';
import { LINK_WORDS } from '../../words/link';
import { SCREEN } from '../../words/screen';
import { printedKey } from '../../words/spoken';
import { useDesk, useDeskItself } from '../app/desk-context';
import { useRoom } from '../app/use-room';
import { MadeAddress } from '../link/MadeAddress';
import { GoalStepper } from '../transport/GoalStepper';

/** Hands the chart on the desk over: a teacher's words, the link, and its code to be read off the screen. */
export function MakeLink({ onClose }: { readonly onClose: () => void }) {
  const room = useRoom(useDeskItself().rooms.link);
  const faulty = useDesk((state) => state.faults.length > 0);
  const [note, setNote] = useState('');
  const id = useId();
  return (
    <section className="make-link" aria-label={LINK_WORDS.make}>
      <p className="caption">{LINK_WORDS.makeHint}</p>
      {faulty && <p>{LINK_WORDS.faulty}</p>}
      {!faulty && (
        <>
          <label htmlFor={id}>{LINK_WORDS.note}</label>
          <textarea
            id={id}
            className="line-field link-words"
            rows={3}
            maxLength={2000}
            value={note}
            onChange={(event) => setNote(event.target.value)}
          />
          <div className="link-goal">
            <GoalStepper />
            <Facts />
          </div>
          {room && <Made room={room} note={note} />}
        </>
      )}
      <button type="button" className="plain" onClick={onClose}>
        {LINK_WORDS.close}
      </button>
    </section>
  );
}

/** What goes along beside the chart's text. */
function Facts() {
  const { direction, kind, level, tempo, goalTempo } = useDesk((state) => state.settings);
  const key = useDesk((state) => state.music?.score.key ?? null);
  const facts = [
    key && printedKey(key),
    `${direction} ${kind}`,
    `${LINK_WORDS.level} ${typeof level === 'number' ? `${level} · ` : ''}${SCREEN.levels[level]}`,
    LINK_WORDS.tempoFacts(tempo, goalTempo),
  ];
  return <p className="caption">{facts.filter(Boolean).join(' · ')}</p>;
}

function Made({ room, note }: { readonly room: LinkRoom; readonly note: string }) {
  // Made anew when the chart or what is set for it changes.
  useDesk((state) => state.text);
  useDesk((state) => state.settings);
  const made = room.make(note, window.location.href);
  return <MadeAddress made={made} />;
}
