import { useState } from 'react';
import {
  emptyPad,
  exchanged,
  type Pad,
  type PadSteps,
  padFault,
  padFrom,
  padIn,
  padOfTaps,
  padText,
  withTap,
} from '../../layout/figure/rhythm-pad';
import type { Clave, Direction } from '../../vocabulary';
import { PAD_WORDS } from '../../words/rhythm-pad';
import { useMediaQuery } from '../app/use-media-query';
import { PadDrawing } from './PadDrawing';
import { PadVerdict } from './PadVerdict';
import { TapButton } from './TapButton';
import './figure.css';

/** A two-bar rhythm written in a direction. */
export interface OwnRhythm {
  readonly text: string;
  readonly direction: Direction;
}

/** What the pad is given. */
export interface RhythmPadProps {
  readonly clave: Clave;
  /** Sixteen steps in 4/4, twelve in 6/8. */
  readonly steps: PadSteps;
  /** Length of an eighth at the tempo that is set, in milliseconds. */
  readonly stepMillis: number;
  /** The rhythm that plays through the chart now, or null. */
  readonly own: OwnRhythm | null;
  readonly playing: () => Pad | null;
  readonly onUse: (text: string, direction: Direction) => void;
  readonly onOff: () => void;
}

/** A two-bar rhythm drawn, typed or tapped on the clave, with what it states; it can be played through the chart. The bars stay with their sides when the direction flips. */
export function RhythmPad({ clave, steps, stepMillis, own, playing, onUse, onOff }: RhythmPadProps) {
  const { direction } = clave;
  const keyboard = useMediaQuery('(any-hover: hover)');
  const [drawn, setDrawn] = useState(() => ({
    pad: (own && padFrom(own.text, steps)) || emptyPad(steps),
    direction: own?.direction ?? direction,
  }));
  const [typed, setTyped] = useState<string | null>(null);
  const [taps, setTaps] = useState<readonly number[]>([]);
  const pad = drawn.pad.length === steps ? padIn(drawn.pad, drawn.direction, direction) : emptyPad(steps);
  const bad = typed === null ? null : padFault(typed, steps);
  const put = (next: Pad): void => setDrawn({ pad: next, direction });
  const draw = (next: Pad): void => {
    put(next);
    setTyped(null);
    setTaps([]);
  };
  // A text that cannot be read has no verdict and is not played, whatever stood there before.
  const silent = bad !== null || pad.every((role) => role === '.');
  const ownNow = own && padFrom(own.text, steps);
  const inUse = own !== null && ownNow !== null && padText(padIn(ownNow, own.direction, direction)) === padText(pad);
  return (
    <section className="group rhythm-pad" aria-label={PAD_WORDS.title}>
      <h3>{PAD_WORDS.title}</h3>
      <p className="caption">{keyboard ? PAD_WORDS.hint : PAD_WORDS.hintByTouch}</p>
      <PadDrawing pad={pad} clave={clave} tapsFrom={taps[0] ?? null} stepMillis={stepMillis} onDraw={draw} />
      <label className="picker">
        <span>{PAD_WORDS.text}</span>
        <input
          value={typed ?? padText(pad)}
          spellCheck={false}
          autoCapitalize="off"
          autoComplete="off"
          aria-invalid={bad !== null}
          onChange={(event) => {
            const text = event.target.value;
            const read = padFrom(text, steps);
            if (read) put(read);
            setTyped(text);
          }}
        />
      </label>
      {bad !== null && <p className="wrong" role="alert">{`${PAD_WORDS.badText(steps)}; ${PAD_WORDS.found(bad)}`}</p>}
      <div className="group-row">
        <TapButton onTap={(at) => setTaps(withTap(taps, at))} />
        {taps.length > 1 && (
          <button type="button" className="key" onClick={() => draw(padOfTaps(taps, stepMillis, steps))}>
            {PAD_WORDS.tapsDone(taps.length)}
          </button>
        )}
        <button type="button" className="key" onClick={() => draw(playing() ?? pad)}>
          {PAD_WORDS.take}
        </button>
        <button type="button" className="key" onClick={() => draw(exchanged(pad))}>
          {PAD_WORDS.exchange}
        </button>
        <button type="button" className="key" onClick={() => draw(emptyPad(steps))}>
          {PAD_WORDS.clear}
        </button>
      </div>
      {!silent && <PadVerdict pad={pad} clave={clave} />}
      <div className="group-row">
        {!silent && !inUse && (
          <button type="button" className="key" onClick={() => onUse(padText(pad), direction)}>
            {PAD_WORDS.use}
          </button>
        )}
        {inUse && <p>{PAD_WORDS.inUse}</p>}
        {own && (
          <button type="button" className="key" onClick={onOff}>
            {PAD_WORDS.off}
          </button>
        )}
      </div>
    </section>
  );
}
