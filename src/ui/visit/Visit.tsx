import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Journal } from '../../state/journal/journal';
import type { LinkRoom } from '../../state/link/link-room';
import type { OfflineRoom } from '../../state/offline/offline-room';
import { LinkDialog } from './LinkDialog';
import { UpdateNote } from './UpdateNote';
import './visit.css';

/** What links to this page begin with behind `#`: a chart, an assignment. */
export interface LinkMarks {
  readonly chart: string;
  readonly assignment: string;
}

/** What comes to the page from outside while it is open: a chart or an assignment in a link, a new version. */
export function Visit(props: {
  readonly link: () => Promise<LinkRoom>;
  readonly offline: () => Promise<OfflineRoom>;
  readonly journal: () => Promise<Journal>;
  readonly marks: LinkMarks;
}) {
  const { link, offline, journal, marks } = props;
  const [room, setRoom] = useState<LinkRoom | null>(null);
  const [copy, setCopy] = useState<OfflineRoom | null>(null);
  useEffect(() => {
    const look = (): void => {
      const { hash } = window.location;
      if (hash.startsWith(marks.assignment)) {
        // It leaves the address, so that loading the page again does not bring it back; the Journal shows it.
        window.history.replaceState(null, '', '#/journal');
        window.dispatchEvent(new HashChangeEvent('hashchange'));
        void journal()
          .then((opened) => opened.assignments())
          .then((room) => room.look(hash));
      }
      if (!hash.startsWith(marks.chart)) return;
      void link().then((opened) => {
        opened.look(hash);
        setRoom(opened);
      });
    };
    look();
    window.addEventListener('hashchange', look);
    void offline().then(setCopy, () => undefined);
    return () => window.removeEventListener('hashchange', look);
  }, [link, offline, journal, marks]);
  return (
    <>
      {room && <LinkVisit room={room} />}
      {copy && <UpdateNote room={copy} />}
    </>
  );
}

function LinkVisit({ room }: { readonly room: LinkRoom }) {
  const visit = useStore(room.store, (state) => state.visit);
  if (visit.kind === 'none') return null;
  return <LinkDialog visit={visit} room={room} />;
}
