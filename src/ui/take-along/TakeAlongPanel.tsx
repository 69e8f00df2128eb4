import { useEffect, useState } from 'react';
import { createPortal } from 'react-dom';
import { useStore } from 'zustand';
import type { FileKind } from '../../state/take-along/choices';
import type { TakeAlong } from '../../state/take-along/take-along';
import { TAKE_ALONG_WORDS } from '../../words/take-along';
import { useDesk, useDeskItself } from '../app/desk-context';
import { usePanel } from '../app/use-panel';
import { PackGroup } from './PackGroup';
import { PlayAlongGroup } from './PlayAlongGroup';
import { ScoreFiles } from './ScoreFiles';
import { WorkLine } from './WorkLine';
import './take-along.css';

/** The files to take along: notes, sheet, play-along, and the pack with all of them. Opened over the page; the music goes on. */
export function TakeAlongPanel({ onClose }: { readonly onClose: () => void }) {
  const panel = usePanel(onClose);
  const { rooms } = useDeskItself();
  const [made, setMade] = useState<TakeAlong | 'failed' | null>(null);
  useEffect(() => {
    let here = true;
    rooms.takeAlong().then(
      (takeAlong) => here && setMade(takeAlong),
      () => here && setMade('failed'),
    );
    return () => {
      here = false;
    };
  }, [rooms]);
  // Beside the sheet, not in it: the sheet may be scaled, and is printed.
  return createPortal(
    <section ref={panel} className="take-along" aria-label={TAKE_ALONG_WORDS.title} tabIndex={-1}>
      <div className="take-along-head">
        <h2>{TAKE_ALONG_WORDS.title}</h2>
        <button type="button" className="key" onClick={onClose}>
          {TAKE_ALONG_WORDS.close}
        </button>
      </div>
      {made === 'failed' && <p role="alert">{TAKE_ALONG_WORDS.notFetched}</p>}
      {made !== null && made !== 'failed' && <Files takeAlong={made} />}
    </section>,
    document.body,
  );
}

function Files({ takeAlong }: { readonly takeAlong: TakeAlong }) {
  const music = useDesk((state) => state.music);
  const work = useStore(takeAlong.store, (state) => state.work);
  const busy = work.kind === 'working';
  const save = (kind: FileKind): void => {
    if (!busy) void takeAlong.save(kind);
  };
  if (music === null) return <p>{TAKE_ALONG_WORDS.noMusic}</p>;
  const parts = { takeAlong, busy, onSave: save };
  return (
    <>
      <p className="take-along-about">{TAKE_ALONG_WORDS.about}</p>
      <ScoreFiles {...parts} />
      <PlayAlongGroup {...parts} />
      <PackGroup {...parts} />
      <WorkLine work={work} onCancel={takeAlong.cancel} onAgain={save} />
    </>
  );
}
