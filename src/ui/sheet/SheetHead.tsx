import type { Score } from '../../music/score';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { directionWords, keyInWords, SHEET_WORDS, tempoWords } from '../../words/sheet';

/** Titles with more characters are set smaller, on two lines at most. */
const LONG_TITLE = 24;

/** Top of the lesson sheet: title, style, key, level, the direction in large print, and the tempo now and to be reached in both units. */
export function SheetHead({
  score,
  tempo,
  goal,
  oneLevel,
}: {
  readonly score: Score;
  readonly tempo: number;
  readonly goal: number;
  /** False leaves the level out, where the sheet holds several. */
  readonly oneLevel: boolean;
}) {
  const first = score.bars[0];
  return (
    <div className="sheet-head">
      <div>
        <h2 className={score.title.length > LONG_TITLE ? 'sheet-long-title' : undefined}>{score.title}</h2>
        <p>{[MUSIC_TEXTS.style(score.style), keyInWords(score.key), ...(oneLevel ? [SHEET_WORDS.level(score.level)] : [])].join(' · ')}</p>
      </div>
      <div className="sheet-direction">
        <b className="sheet-direction-name">{directionWords(score.clave)}</b>
        <span className="sheet-begins">
          {SHEET_WORDS.claveName}
          {first && `, ${SHEET_WORDS.begins(first.side)}`}
        </span>
      </div>
      <div className="sheet-tempo">
        <span>
          <strong>{SHEET_WORDS.now}</strong> {tempoWords(tempo)}
        </span>
        <span>
          <strong>{SHEET_WORDS.goal}</strong> {tempoWords(goal)}
        </span>
      </div>
    </div>
  );
}
