import type { FindingFacts, StepPicture } from '../../practice/finding';
import { FINDINGS } from '../../words/findings';
import { PARTS_WORDS } from '../../words/parts';
import { StepPictureView } from '../listening/StepPictureView';
import '../listening/listening.css';

/** One finding of every kind, in the order of the vocabulary. */
const FOUND: readonly FindingFacts[] = [
  { kind: 'crossed', fromStart: true, bar: 0 },
  { kind: 'crossed', fromStart: false, bar: 4 },
  { kind: 'displaced', steps: 2, fromStart: true, bar: 0 },
  { kind: 'other clave', heard: 'rumba', asked: 'son' },
  { kind: 'silent' },
  { kind: 'stopped', bar: 5 },
  { kind: 'missed', count: 3, of: 8, step: 7, bar: 1 },
  { kind: 'extra', count: 2, step: 4, bar: 2 },
  { kind: 'late chords', count: 3, of: 4, step: 7, bar: 1 },
  { kind: 'wrong notes', count: 2, of: 8, chord: 'A7', bar: 1 },
  { kind: 'wrong octave', count: 2, of: 8, bar: 3 },
  { kind: 'rushing', msPerCycle: 34, bars: null },
  { kind: 'dragging', msPerCycle: -41, bars: null },
  { kind: 'swung', shareOfStep: 0.31 },
  { kind: 'step off', cycleStep: 11, step: 3, side: 3, meanMs: -48 },
  { kind: 'uneven', spreadMs: 38, stepMs: 170 },
  { kind: 'offset', ms: 36 },
  { kind: 'hands apart', leftBehindMs: 44 },
  { kind: 'cut short', count: 3, of: 4, step: 7, bar: 0 },
  { kind: 'inner loud', velocityApart: 2 },
];

/** A clave cycle with a step of each sort: in place, early, late, spread out, missed, played where nothing is asked for, silent. */
const STEPS: readonly StepPicture[] = Array.from({ length: 16 }, (_, cycleStep) => ({
  cycleStep,
  asked: cycleStep % 2 === 0 || cycleStep === 7 ? 4 : 0,
  played: cycleStep % 4 === 0 ? 4 : 3,
  missed: cycleStep === 6 ? 2 : 0,
  extra: cycleStep === 9 ? 1 : 0,
  meanMs: cycleStep % 2 === 0 || cycleStep === 7 ? ([0, -42, 31, 4][(cycleStep / 2) % 4] ?? 12) : null,
  spreadMs: cycleStep === 4 ? 40 : 9,
}));

/** What is said and drawn after a take: the picture of the steps, full and empty, and every finding there is. */
export function Judged() {
  return (
    <>
      <h2>{PARTS_WORDS.judged}</h2>
      <StepPictureView steps={STEPS} stepMs={170} />
      <StepPictureView steps={STEPS.map((step) => ({ ...step, played: 0, extra: 0, meanMs: null, spreadMs: null }))} stepMs={null} />
      <ol className="findings">
        {FOUND.map((facts) => (
          <li key={JSON.stringify(facts)}>
            <p>{FINDINGS.sentence(facts)}</p>
          </li>
        ))}
      </ol>
    </>
  );
}
