import { useEffect, useState } from 'react';
import type { Listening } from '../../state/listening/listening-state';
import type { SourceName } from '../../state/listening/ports';
import { LISTENING } from '../../words/listening';
import { usePlaying } from '../app/desk-context';
import { usePanel } from '../app/use-panel';
import { useTakesRoom } from '../app/use-takes-room';
import type { PanelOver } from '../practise/board-props';
import { BandChoice } from './BandChoice';
import { DeviceLine } from './DeviceLine';
import { DeviceMore } from './DeviceMore';
import { Lamp } from './Lamp';
import { useHeard, useListening } from './listening-context';
import { metOver } from './Met';
import { isMisplaced } from './misplaced';
import { PlayedPartChoice } from './PlayedPartChoice';
import { ReportSheet } from './ReportSheet';
import { SelfRating } from './SelfRating';
import { SourceChooser } from './SourceChooser';
import { TapField } from './TapField';
import { verdictsOver } from './Verdicts';
import './listening.css';

/** What Play along is given. */
export interface PlayAlongProps {
  /** Puts marks over the panels of the cards, or takes them away. */
  readonly onOver: (over: PanelOver | null) => void;
  readonly onClose: () => void;
}

/** Play along: a row over the board that says what is listened to and how it goes, and the report above the transport. */
export function PlayAlong({ onOver, onClose }: PlayAlongProps) {
  const listening = useListening();
  const playing = usePlaying((state) => state.transport.kind !== 'stopped');
  const row = usePanel(onClose, { escapeWithin: true });
  useTakesRoom(row);
  // Opened from under the cards of a phone on its side, the row would stand off the screen.
  useEffect(() => void window.scrollTo(0, 0), []);
  useEffect(
    () => () => {
      listening?.leave();
      onOver(null);
    },
    [listening, onOver],
  );
  return (
    <section className="play-along" ref={row} tabIndex={-1} aria-label={LISTENING.title} data-playing={playing || undefined}>
      {listening ? (
        <Round listening={listening} onOver={onOver} onClose={onClose} onChosen={() => row.current?.focus({ preventScroll: true })} />
      ) : (
        <h2>{LISTENING.title}</h2>
      )}
    </section>
  );
}

interface RoundProps extends PlayAlongProps {
  readonly listening: Listening;
  /** The button that was pressed is gone: the focus needs another place. */
  readonly onChosen: () => void;
}

function Round({ listening, onOver, onClose, onChosen }: RoundProps) {
  const source = useHeard(listening, (state) => state.source);
  const report = useHeard(listening, (state) => state.report);
  const replaying = useHeard(listening, (state) => state.replaying);
  const stopped = usePlaying((state) => state.transport.kind === 'stopped');
  const [rates, setRates] = useState(false);
  const [shown, setShown] = useState(false);
  // Stop opens the report of what was just played; while it plays the music has the page.
  useEffect(() => setShown(stopped && !replaying && report !== null), [stopped, replaying, report]);
  useEffect(
    () => onOver(replaying ? metOver(replaying.met) : report && !isMisplaced(report) ? verdictsOver(report) : null),
    [report, replaying, onOver],
  );
  const tapping = useHeard(listening, (state) => state.source === 'keys' && state.rhythmKeys);
  const choose = (name: SourceName | 'tap' | 'none'): void => {
    setRates(name === 'none');
    if (name === 'none') listening.close();
    else listening.choose(name === 'tap' ? 'keys' : name);
    // A tap on the screen and a key that only taps are one source.
    if (name === 'tap' || name === 'keys') listening.set({ rhythmKeys: name === 'tap' });
    onChosen();
  };
  if (source === null && !rates) return <SourceChooser onChoose={choose} onClose={onClose} />;
  return (
    <>
      {source === null ? (
        <SelfRating listening={listening} />
      ) : (
        <>
          <Lamp listening={listening} source={source} />
          <DeviceLine listening={listening} source={source} />
          <PlayedPartChoice listening={listening} />
        </>
      )}
      {tapping && <TapField listening={listening} />}
      {report && !shown && (
        <button type="button" className="key" onClick={() => setShown(true)}>
          {LISTENING.showReport}
        </button>
      )}
      <BandChoice listening={listening} />
      {source === null ? (
        <button type="button" className="key" onClick={() => setRates(false)}>
          {LISTENING.other}
        </button>
      ) : (
        <DeviceMore listening={listening} source={source} />
      )}
      <button type="button" className="key" onClick={onClose}>
        {LISTENING.close}
      </button>
      {report && shown && <ReportSheet listening={listening} report={report} onClose={() => setShown(false)} />}
    </>
  );
}
