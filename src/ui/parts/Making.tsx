import type { Work } from '../../state/take-along/take-along';
import { PARTS_WORDS } from '../../words/parts';
import { DrillCard } from '../drills/DrillCard';
import { WorkLine } from '../take-along/WorkLine';
import '../drills/drills.css';
import '../take-along/take-along.css';

const nothing = (): void => undefined;

/** A file on its way, and every way in which that ends. */
const WORK: readonly Work[] = [
  { kind: 'working', what: 'pack', stage: 'sounds', share: 0, file: '' },
  { kind: 'working', what: 'pack', stage: 'files', share: 0.4, file: 'last-ferry-e-flat.mid' },
  { kind: 'done', what: 'midi', name: 'last-ferry.mid', bytes: 8_200 },
  { kind: 'cancelled', what: 'pack' },
  { kind: 'disk refused', what: 'pack', reason: PARTS_WORDS.refused },
  { kind: 'no sounds', what: 'wav', reason: PARTS_WORDS.refused },
  { kind: 'failed', what: 'sheet', reason: PARTS_WORDS.refused },
];

/** Lines about files in the making, and cards of drills. */
export function Making() {
  return (
    <>
      <h2>{PARTS_WORDS.making}</h2>
      {WORK.map((work) => (
        <WorkLine key={JSON.stringify(work)} work={work} onCancel={nothing} onAgain={nothing} />
      ))}
      <h2>{PARTS_WORDS.drills}</h2>
      <ul className="drill-list">
        <DrillCard name="tempo ladder" onBegin={nothing} />
        <DrillCard name="gap" disabled onBegin={nothing} />
      </ul>
    </>
  );
}
