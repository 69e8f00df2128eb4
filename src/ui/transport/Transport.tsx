import { lazy, Suspense, startTransition, useId, useState } from 'react';
import { SCREEN } from '../../words/screen';
import { useDesk, usePlaying, useRun } from '../app/desk-context';
import { AnotherButton } from './AnotherButton';
import { DirectionSwitch } from './DirectionSwitch';
import { HandSwitches } from './HandSwitches';
import { LevelStepper } from './LevelStepper';
import { LoopControl } from './LoopControl';
import { TempoControl } from './TempoControl';
import './transport.css';

const CueButton = lazy(() => import('./CueButton').then((module) => ({ default: module.CueButton })));
const TransportNotices = lazy(() => import('./TransportNotices').then((module) => ({ default: module.TransportNotices })));
const TempoSheet = lazy(() => import('./TempoSheet').then((module) => ({ default: module.TempoSheet })));
const MoreSheet = lazy(() => import('./MoreSheet').then((module) => ({ default: module.MoreSheet })));

/** The transport: always in the same place, with what is needed every minute; the rest opens above it. */
export function Transport(props: { readonly onBalance: () => void; readonly onKeys: () => void; readonly onStand: () => void }) {
  const run = useRun();
  const stopped = usePlaying((state) => state.transport.kind === 'stopped');
  const cue = usePlaying((state) => state.vamp !== null);
  const ready = useDesk((state) => state.music !== null);
  const direction = useDesk((state) => state.settings.direction);
  const [open, setOpen] = useState<'more' | 'tempo' | null>(null);
  const sheetId = useId();
  const close = (): void => setOpen(null);
  /** Closes at once; opens when the sheet has come. */
  const toggle = (sheet: 'more' | 'tempo') => () => (open === sheet ? close() : startTransition(() => setOpen(sheet)));
  return (
    <section className="transport" aria-label={SCREEN.transportName}>
      <Suspense fallback={null}>
        <TransportNotices />
      </Suspense>
      <Suspense fallback={null}>
        {open === 'more' && <MoreSheet {...props} id={sheetId} onClose={close} />}
        {open === 'tempo' && <TempoSheet id={sheetId} onClose={close} />}
      </Suspense>
      <div className="transport-bar">
        <button type="button" className="play" disabled={!ready} onClick={() => run({ kind: 'play or stop' })}>
          {stopped ? SCREEN.play : SCREEN.stop}
        </button>
        <Suspense fallback={null}>{cue && <CueButton />}</Suspense>
        <TempoControl open={open === 'tempo'} sheetId={sheetId} onOpen={toggle('tempo')} />
        <DirectionSwitch direction={direction} onExchange={() => run({ kind: 'exchange sides' })} />
        <div className="from-medium">
          <LevelStepper />
        </div>
        <AnotherButton />
        <div className="from-wide">
          <HandSwitches />
        </div>
        <div className="from-wide">
          <LoopControl />
        </div>
        <button
          type="button"
          className="key key-more"
          aria-expanded={open === 'more'}
          aria-controls={open === 'more' ? sheetId : undefined}
          onClick={toggle('more')}
        >
          {open === 'more' ? SCREEN.less : SCREEN.more}
        </button>
      </div>
    </section>
  );
}
