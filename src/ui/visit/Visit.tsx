import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { LinkRoom } from '../../state/link/link-room';
import type { OfflineRoom } from '../../state/offline/offline-room';
import { LinkDialog } from './LinkDialog';
import { UpdateNote } from './UpdateNote';
import './visit.css';

/** What comes to the page from outside while it is open: a chart in a link, a new version. */
export function Visit(props: {
  readonly link: () => Promise<LinkRoom>;
  readonly offline: () => Promise<OfflineRoom>;
  readonly mark: string;
}) {
  const { link, offline, mark } = props;
  const [room, setRoom] = useState<LinkRoom | null>(null);
  const [copy, setCopy] = useState<OfflineRoom | null>(null);
  useEffect(() => {
    const look = (): void => {
      const { hash } = window.location;
      if (!hash.startsWith(mark)) return;
      void link().then((opened) => {
        opened.look(hash);
        setRoom(opened);
      });
    };
    look();
    window.addEventListener('hashchange', look);
    void offline().then(setCopy, () => undefined);
    return () => window.removeEventListener('hashchange', look);
  }, [link, offline, mark]);
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
