import { useEffect, useState } from 'react';

/**
 * A part of the state that is fetched when it is first needed, or null until it is there, where it cannot be fetched and where the page
 * has none (`room` null). `room` must keep its identity.
 */
export function useRoom<Room>(room: (() => Promise<Room>) | null): Room | null {
  const [opened, setOpened] = useState<Room | null>(null);
  useEffect(() => {
    let here = true;
    void room?.().then(
      (part) => here && setOpened(() => part),
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, [room]);
  return opened;
}
