import { useState } from 'react';
import {
  EMPTY_PAD,
  exchanged,
  type Pad,
  padAlignment,
  padFault,
  padFrom,
  padOfTaps,
  padText,
  touched,
  withTap,
} from '../../layout/figure/rhythm-pad';
import type { Clave, Direction } from '../../vocabulary';
import { alignmentSentence } from '../../words/alignment-sentence';
import { PAD_WORDS } from '../../words/rhythm-pad';
import { PadRow } from './PadRow';
import './figure.css';

/** A two-bar rhythm drawn, typed or tapped on the clave, with what it states; it can be played through the chart. */
export function RhythmPad(props: {
  readonly clave: Clave;
  /** Length of an eighth at the tempo that is set, in milliseconds. */
  readonly stepMillis: number;
  readonly playing: () => Pad | null;
  readonly onUse: (text: string, direction: Direction) => void;
}) {
  const { clave } = props;
  const [pad, setPad] = useState<Pad>(EMPTY_PAD);
  const [typed, setTyped] = useState<string | null>(null);
  const [taps, setTaps] = useState<readonly number[]>([]);
  const bad = typed === null ? null : padFault(typed);
  const tap = (at: number): void => setTaps(withTap(taps, at));
  const draw = (next: Pad): void => {
    setPad(next);
    setTyped(null);
    setTaps([]);
  };
  const found = padAlignment(pad, clave);
  const turned = padAlignment(exchanged(pad), clave);
  // A text that cannot be read has no verdict and is not played, whatever stood there before.
  const silent = bad !== null || pad.every((role) => role === '.');
  return (
    <section className="group rhythm-pad" aria-label={PAD_WORDS.title}>
      <h3>{PAD_WORDS.title}</h3>
      <p className="caption">{PAD_WORDS.hint}</p>
      <PadRow pad={pad} clave={clave} from={0} onTouch={(step) => draw(touched(pad, step))} />
      <PadRow pad={pad} clave={clave} from={8} onTouch={(step) => draw(touched(pad, step))} />
      <label className="picker">
        <span>{PAD_WORDS.text}</span>
        <input
          value={typed ?? padText(pad)}
          spellCheck={false}
          aria-invalid={bad !== null}
          onChange={(event) => {
            const text = event.target.value;
            const read = padFrom(text);
            if (read) setPad(read);
            setTyped(text);
          }}
        />
      </label>
      {bad !== null && <p className="wrong" role="alert">{`${PAD_WORDS.badText}; ${PAD_WORDS.found(bad)}`}</p>}
      <div className="group-row">
        <button
          type="button"
          className="key"
          title={PAD_WORDS.tapHint}
          onPointerDown={(event) => tap(event.timeStamp)}
          onKeyDown={(event) => {
            if (event.repeat || (event.key !== 'Enter' && event.key !== ' ')) return;
            // Taken here, so that Space neither presses the button again nor stops the music.
            event.preventDefault();
            tap(event.timeStamp);
          }}
        >
          {PAD_WORDS.tap}
        </button>
        {taps.length > 1 && (
          <button type="button" className="key" onClick={() => draw(padOfTaps(taps, props.stepMillis))}>
            {`${PAD_WORDS.tapsDone} (${taps.length})`}
          </button>
        )}
        <button type="button" className="key" onClick={() => draw(props.playing() ?? pad)}>
          {PAD_WORDS.take}
        </button>
        <button type="button" className="key" onClick={() => draw(exchanged(pad))}>
          {PAD_WORDS.exchange}
        </button>
        <button type="button" className="key" onClick={() => draw(EMPTY_PAD)}>
          {PAD_WORDS.clear}
        </button>
      </div>
      {!silent && (
        <div aria-live="polite">
          <p>
            <strong>{found.verdict}</strong> {alignmentSentence(found)}
          </p>
          <p className="caption">
            {PAD_WORDS.other}: {turned.verdict}
          </p>
          <p className="caption">{PAD_WORDS.source}</p>
          <button type="button" className="key" onClick={() => props.onUse(padText(pad), clave.direction)}>
            {PAD_WORDS.use}
          </button>
        </div>
      )}
    </section>
  );
}
