import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { WaitingRestore } from '../../state/safety/parts';
import type { Safety } from '../../state/safety/safety';
import { SAFETY_WORDS } from '../../words/safety';

const CHOICES = ['keep both', 'take the file', 'keep mine'] as const;
/** At most this many faults or differences are listed. */
const SHOWN = 12;

/** What a backup would bring, before anything happens; why a file is none; and the way back after a merge. */
export function RestorePlan({ safety }: { readonly safety: Safety }) {
  const waiting = useStore(safety.store, (state) => state.waiting);
  const faults = useStore(safety.store, (state) => state.faults);
  const merged = useStore(safety.store, (state) => state.merged);
  return (
    <div aria-live="polite">
      {faults.length > 0 && (
        <div className="notice">
          <ul>
            {faults.map((fault) => (
              <li key={fault.path}>{SAFETY_WORDS.fault(fault)}</li>
            ))}
          </ul>
          <button type="button" className="plain" onClick={safety.leaveRestore}>
            {SAFETY_WORDS.leave}
          </button>
        </div>
      )}
      {merged && !waiting && (
        <p className="notice">
          {SAFETY_WORDS.merged}
          <button type="button" className="plain" onClick={() => void safety.undoRestore()}>
            {SAFETY_WORDS.undoMerge}
          </button>
        </p>
      )}
      {waiting && <Plan key={waiting.name} waiting={waiting} safety={safety} />}
    </div>
  );
}

function Plan({ waiting, safety }: { readonly waiting: WaitingRestore; readonly safety: Safety }) {
  const [onDifference, setOnDifference] = useState<(typeof CHOICES)[number]>('keep both');
  const [withSettings, setWithSettings] = useState(false);
  const { plan, file, leftOut } = waiting;
  const place = useRef<HTMLDivElement>(null);
  // The file was given elsewhere on the page; what it would bring is looked at here.
  useEffect(() => {
    place.current?.focus();
    place.current?.scrollIntoView?.({ block: 'center' });
  }, []);
  const day = (moment: number | string): string => new Date(moment).toLocaleDateString();
  return (
    <div ref={place} tabIndex={-1} className="notice restore-plan">
      <p>{SAFETY_WORDS.waiting(waiting.name, day(file.made))}</p>
      <ul className="plan-lines">
        {planLines(waiting).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {plan.differentCharts.length > 0 && (
        <fieldset>
          <legend>{SAFETY_WORDS.onDifference}</legend>
          <ul className="caption">
            {plan.differentCharts.slice(0, SHOWN).map((one) => (
              <li key={one.file.id}>{SAFETY_WORDS.difference(one.file.title, day(one.mine.changed), day(one.file.changed))}</li>
            ))}
          </ul>
          {CHOICES.map((choice) => (
            <label key={choice} className="check">
              <input type="radio" name="on-difference" checked={onDifference === choice} onChange={() => setOnDifference(choice)} />
              {SAFETY_WORDS.choices[choice]}
            </label>
          ))}
        </fieldset>
      )}
      {plan.otherRecords.length > 0 && (
        <label className="check">
          <input type="checkbox" checked={withSettings} onChange={(event) => setWithSettings(event.target.checked)} />
          {SAFETY_WORDS.withSettings(plan.otherRecords.length)}
        </label>
      )}
      {leftOut.length > 0 && (
        <>
          <p>{SAFETY_WORDS.leftOut(leftOut.length)}</p>
          <ul className="caption">
            {leftOut.slice(0, SHOWN).map((fault) => (
              <li key={fault.path}>{SAFETY_WORDS.fault(fault)}</li>
            ))}
          </ul>
        </>
      )}
      <div className="safety-acts">
        <button type="button" className="key" onClick={() => void safety.restore({ onDifference, withSettings })}>
          {SAFETY_WORDS.restore}
        </button>
        <button type="button" className="plain" onClick={safety.leaveRestore}>
          {SAFETY_WORDS.leave}
        </button>
      </div>
    </div>
  );
}

function planLines({ plan }: WaitingRestore): readonly string[] {
  const lines: string[] = [];
  const add = (count: number, words: (count: number) => string): void => {
    if (count > 0) lines.push(words(count));
  };
  add(plan.newCharts.length, SAFETY_WORDS.newCharts);
  add(plan.differentCharts.length, SAFETY_WORDS.differentCharts);
  add(plan.newSets.length + plan.newerSets.length, SAFETY_WORDS.newSets);
  add(plan.newEntries.length, SAFETY_WORDS.newEntries);
  if (lines.length === 0) lines.push(SAFETY_WORDS.nothingNew);
  add(plan.sameCharts.length, SAFETY_WORDS.sameCharts);
  return lines;
}
