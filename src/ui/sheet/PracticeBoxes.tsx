import { tempoLadder } from '../../layout/sheet/tempo-ladder';
import { twelveKeys } from '../../layout/sheet/twelve-keys';
import type { Key } from '../../music/chart/chart';
import { SHEET_WORDS } from '../../words/sheet';
import { printedKey } from '../../words/spoken';

/** Boxes to tick with a pencil: the tempo ladder from now to the goal, and the twelve keys from this one round the circle; either can be left out. */
export function PracticeBoxes({
  musicKey,
  tempo,
  goal,
  ladder,
  keys,
}: {
  readonly musicKey: Key;
  readonly tempo: number;
  readonly goal: number;
  readonly ladder: boolean;
  readonly keys: boolean;
}) {
  return (
    <div className="sheet-practice">
      {ladder && (
        <>
          <h4>{SHEET_WORDS.ladder}</h4>
          <ul className="sheet-boxes">
            {tempoLadder(tempo, goal).map((rung) => (
              <li key={rung}>
                <span className="sheet-box" />
                {rung}
              </li>
            ))}
          </ul>
        </>
      )}
      {keys && (
        <>
          <h4>{SHEET_WORDS.keys}</h4>
          <ul className="sheet-boxes">
            {twelveKeys(musicKey).map((key, i) => (
              <li key={key.tonic} className={i === 0 ? 'sheet-here' : undefined}>
                <span className="sheet-box" />
                {printedKey(key)}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>{SHEET_WORDS.fingering}</p>
    </div>
  );
}
