import type { Finding, FindingFacts } from '../../practice/finding';
import type { Listening, PassReport } from '../../state/listening/listening-state';
import { FINDINGS } from '../../words/findings';
import { LISTENING } from '../../words/listening';
import { useDesk } from '../app/desk-context';
import { Worded } from '../glossary/Worded';

/** What is given to the list. */
export interface FindingListProps {
  readonly listening: Listening;
  readonly report: PassReport;
  /** The bar of the form that a bar of the take is. */
  readonly barOf: (index: number) => number;
}

/** At most three sentences, the worst first, each with the loop that mends it where that is not the one in force, and the same again, slower. */
export function FindingList({ listening, report, barOf }: FindingListProps) {
  const { take, assessment } = report;
  const { tempo, loop: inForce } = useDesk((state) => state.settings);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const { findings } = assessment;
  const [worst] = findings;
  if (!worst) return null;
  const slower = listening.slowerThan(tempo);
  const offered = new Set([inForce && barsNamed(inForce)]);
  /** Each loop once: the player sees at a glance that three sentences are about the same bars. */
  const isNew = ({ loop }: Finding): boolean => {
    const found = listening.loopOf(loop);
    const named = found && barsNamed(found);
    if (offered.has(named)) return false;
    offered.add(named);
    return true;
  };
  return (
    <>
      <ol className="findings">
        {findings.map((finding) => (
          <li key={`${finding.facts.kind} ${finding.loop.fromBar}`}>
            <p>
              <Worded text={FINDINGS.sentence(inForm(finding.facts, barOf), take.music.performance.clave.cycleSteps === 12)} />
            </p>
            {isNew(finding) && (
              <button type="button" className="key" onClick={() => listening.playLoop(finding.loop)}>
                {LISTENING.loopIt(barOf(finding.loop.fromBar) + 1, barOf(finding.loop.toBar - 1) + 1)}
              </button>
            )}
          </li>
        ))}
      </ol>
      {slower !== null && (
        <button type="button" className="key findings-slower" onClick={() => listening.playLoop(worst.loop, slower)}>
          {LISTENING.slower(unit === 'half' ? slower : slower * 2)}
        </button>
      )}
    </>
  );
}

const barsNamed = ({ fromBar, toBar }: { readonly fromBar: number; readonly toBar: number }): string => `${fromBar}–${toBar}`;

/** The facts with their bar counted in the form, as it stands on the screen, and not in the loop. */
function inForm(facts: FindingFacts, barOf: (index: number) => number): FindingFacts {
  return 'bar' in facts ? { ...facts, bar: barOf(facts.bar) } : facts;
}
