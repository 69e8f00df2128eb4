import { type FormEvent, useId, useState } from 'react';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from './desk-context';

/** The way in within a minute: four chords, or a loop and a key, played at once. What is typed stays until it is changed. */
export function QuickLine() {
  const run = useRun();
  const faults = useDesk((state) => state.quickFaults);
  const [line, setLine] = useState('');
  const [sent, setSent] = useState('');
  const id = useId();
  const wrong = faults.length > 0 && sent === line;
  const send = (event: FormEvent): void => {
    event.preventDefault();
    if (line.trim() === '') return;
    setSent(line);
    run({ kind: 'play quick', line });
  };
  return (
    <form className="quick" onSubmit={send}>
      <label className="visually-hidden" htmlFor={id}>
        {SCREEN.quickLabel}
      </label>
      <input
        id={id}
        className="quick-field"
        value={line}
        placeholder={SCREEN.quickExample}
        title={SCREEN.quickLabel}
        spellCheck={false}
        autoCapitalize="off"
        autoComplete="off"
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-fault` : undefined}
        onChange={(event) => setLine(event.target.value)}
      />
      <button type="submit" className="quick-play" disabled={line.trim() === ''}>
        {SCREEN.quickPlay}
      </button>
      {wrong && (
        <p className="quick-fault" id={`${id}-fault`} role="alert">
          {faults.slice(0, 2).map((fault) => (
            <span key={`${fault.line}:${fault.column}:${fault.code}`}>
              <b>{fault.text}</b> {MUSIC_TEXTS.expected(fault.expected)}
              {fault.nearest !== null && (
                <button type="button" onClick={() => setLine(line.replace(fault.text, fault.nearest ?? fault.text))}>
                  {SCREEN.correct(fault.nearest)}
                </button>
              )}{' '}
            </span>
          ))}
        </p>
      )}
    </form>
  );
}
