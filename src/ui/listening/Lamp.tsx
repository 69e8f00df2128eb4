import { useEffect, useRef } from 'react';
import type { Listening } from '../../state/listening/listening-state';
import type { Played, SourceName } from '../../state/listening/ports';
import { LISTENING } from '../../words/listening';
import { plainName } from './plain-name';

/** How long the lamp stays lit. */
const LIT_MS = 160;

/** A lamp that lights with every note, by reference and without React, and the name of the note: "is it me that is heard?" */
export function Lamp({ listening, source }: { readonly listening: Listening; readonly source: SourceName }) {
  const lamp = useRef<HTMLDivElement>(null);
  const name = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    let out: ReturnType<typeof setTimeout> | undefined;
    const light = (played: Played): void => {
      if ((played.kind !== 'note on' && played.kind !== 'onset') || !lamp.current) return;
      lamp.current.toggleAttribute('data-lit', true);
      if (name.current) name.current.textContent = played.kind === 'onset' ? '' : plainName(played.midi);
      clearTimeout(out);
      out = setTimeout(() => lamp.current?.removeAttribute('data-lit'), LIT_MS);
    };
    const end = listening.onPlayed(light);
    return () => {
      end();
      clearTimeout(out);
    };
  }, [listening]);
  useEffect(() => {
    if (source !== 'microphone') return;
    const meter = setInterval(() => lamp.current?.style.setProperty('--level', String(Math.min(1, listening.level() * 2))), 100);
    return () => clearInterval(meter);
  }, [listening, source]);
  return (
    <div className="lamp" ref={lamp} data-meter={source === 'microphone' || undefined} aria-hidden="true">
      <i />
      <span ref={name} className="lamp-note">
        {LISTENING.lamp}
      </span>
    </div>
  );
}
