import { useRef } from 'react';
import { Glossary } from '../glossary/Glossary';
import { Caution } from '../transport/Caution';
import { useDeskItself } from './desk-context';
import { HintLine } from './HintLine';
import { useHabitsRoom } from './habits-context';
import { usePedals } from './use-pedals';
import { useTakesRoom } from './use-takes-room';
import './hints.css';

/** The board leaves the line its height. */
const keepRoom = (height: number): void => document.documentElement.style.setProperty('--line-px', `${height}px`);

/** What comes once the page stands: the glossary, pedals that send keys of their own and, where `lines` asks for it, the place above the transport where a caution or a hint stands and covers nothing. */
export function Afterwards({ lines }: { readonly lines: boolean }) {
  const desk = useDeskItself();
  const room = useHabitsRoom();
  const place = useRef<HTMLDivElement>(null);
  usePedals(desk, room);
  useTakesRoom(place, keepRoom);
  return (
    <>
      <Glossary />
      <div className="page-line" ref={place}>
        <Caution shown={lines} />
        {lines && room && <HintLine room={room} />}
      </div>
    </>
  );
}
