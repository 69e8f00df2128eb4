import { useDeskItself } from './desk-context';
import { HintLine } from './HintLine';
import { useHabitsRoom } from './habits-context';
import { usePedals } from './use-pedals';

/** What comes once the page stands: the hints of the first minutes where `hints` asks for them, and pedals that send keys of their own. */
export function Afterwards({ hints }: { readonly hints: boolean }) {
  const desk = useDeskItself();
  const room = useHabitsRoom();
  usePedals(desk, room);
  return room && hints && <HintLine room={room} />;
}
