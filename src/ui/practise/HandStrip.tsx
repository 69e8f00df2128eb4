import { type CSSProperties, memo, type RefObject, useLayoutEffect, useMemo, useRef } from 'react';
import { keyboardAround } from '../../layout/keyboard';
import type { Score } from '../../music/score';
import { SHAPE_WORDS } from '../../words/hand-shape';
import { restAt, STAYS_WIDTH, type StripFollower, stripFollower } from './strip-lights';

const WHITE_HEIGHT = 110;
const BLACK_HEIGHT = 66;
/** As many notes as a hand moves or keeps. */
const FOUR = [0, 1, 2, 3];

/** What the hand strip is given. */
export interface HandStripProps {
  readonly score: Score;
  readonly playing: boolean;
  /** Tick of the stroke that is shown when nothing plays. */
  readonly cursorTick: number;
  /** Takes the strip's follower, for the frame loop to call. */
  readonly follower: RefObject<StripFollower | null>;
}

/** A keyboard around the figure: the hands' shape now (filled) and next (outlined), and the same in words. It is lit from outside React, by `strip-lights.ts`. */
export const HandStrip = memo(function HandStrip({ score, playing, cursorTick, follower }: HandStripProps) {
  const strip = useRef<HTMLElement>(null);
  const keyboard = useMemo(
    () => keyboardAround([...score.parts.rightHand, ...score.parts.leftHand].flatMap((stroke) => stroke.midi)),
    [score],
  );
  useLayoutEffect(() => {
    if (!strip.current) return;
    follower.current = stripFollower(strip.current);
    if (!playing) restAt(strip.current, score, cursorTick);
  });
  useLayoutEffect(
    () => () => {
      follower.current = null;
    },
    [follower],
  );
  const ordered = [...keyboard.keys].sort((one, other) => Number(one.black) - Number(other.black));
  return (
    <section className="hand-strip" ref={strip} aria-hidden="true">
      <svg
        aria-hidden="true"
        viewBox={`0 0 ${keyboard.width} ${WHITE_HEIGHT}`}
        style={{ '--keys-ratio': keyboard.width / WHITE_HEIGHT } as CSSProperties}
      >
        {ordered.map((key) => (
          <rect
            key={key.midi}
            className={key.black ? 'black-key' : 'white-key'}
            x={key.x}
            y={0}
            width={key.width}
            height={key.black ? BLACK_HEIGHT : WHITE_HEIGHT}
            rx={key.black ? 3 : 0}
          />
        ))}
        {keyboard.gap && <rect className="key-gap" x={keyboard.gap.x} y={-2} width={keyboard.gap.width} height={WHITE_HEIGHT + 4} />}
        {ordered.map((key) => {
          const x = key.x + key.width / 2;
          const y = key.black ? 48 : 93;
          return (
            <g key={key.midi} data-midi={key.midi} data-x={x} data-y={y} className={key.black ? 'key on-black' : 'key'}>
              <rect className="left-next" x={x - 13} y={y - 13} width={26} height={26} rx={3} />
              <rect className="left-now" x={x - 13} y={y - 13} width={26} height={26} rx={3} />
              <circle className="right-next" cx={x} cy={y} r={14} />
              <circle className="right-now" cx={x} cy={y} r={14} />
            </g>
          );
        })}
        {FOUR.map((at) => (
          <g key={at} className="move">
            <path className="under" d="" />
            <path d="" />
          </g>
        ))}
        {FOUR.map((at) => (
          <g key={at} className="stays">
            <path d="" />
            <rect y={0} width={STAYS_WIDTH} height={29} rx={5} />
            <text y={23} textAnchor="middle" fontSize={23} />
          </g>
        ))}
      </svg>
      <div className="strip-words">
        <p className="words-now">
          <i className="mark-now" /> {SHAPE_WORDS.now} <span data-words="now" />
        </p>
        <p className="words-next">
          <i className="mark-next" /> {SHAPE_WORDS.next} <span data-words="next" />
        </p>
      </div>
    </section>
  );
});
