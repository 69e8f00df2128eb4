import { useEffect, useMemo, useState } from 'react';
import { DIFFICULTIES, LOOK_SECONDS, SIGHT_STYLES, sightChart } from '../../state/drills/at-sight';
import { DRILLS } from '../../words/drills';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { printedChord } from '../../words/spoken';
import { anySeed, nextSeed, type OwnDrillProps, SeedField } from './SeedField';

/** Reading at sight: choose, look for half a minute, play with the band; a figure for it is shown only afterwards. */
export function AtSight({ room, seed: given, onLeave }: OwnDrillProps) {
  const [seed, setSeed] = useState(() => given ?? anySeed());
  const [style, setStyle] = useState<(typeof SIGHT_STYLES)[number]>('salsa');
  const [difficulty, setDifficulty] = useState<(typeof DIFFICULTIES)[number]>(1);
  const [left, setLeft] = useState<number | null>(null);
  const [played, setPlayed] = useState(false);
  const chart = useMemo(() => sightChart({ seed, style, difficulty, title: DRILLS.sight.title(seed) }), [seed, style, difficulty]);
  useEffect(() => {
    if (left === null || left <= 0) return;
    const timer = setTimeout(() => setLeft(left - 1), 1000);
    return () => clearTimeout(timer);
  }, [left]);
  const another = (): void => {
    setSeed(nextSeed(seed));
    setLeft(null);
    setPlayed(false);
  };
  const play = (): void => {
    room.playAtSight(chart.text);
    setLeft(0);
    setPlayed(true);
  };
  return (
    <section className="drill-page" aria-labelledby="sight-drill">
      <h2 id="sight-drill">{DRILLS.names['at sight']}</h2>
      <p>{DRILLS.why['at sight']}</p>
      <div className="drill-row">
        <SeedField label={DRILLS.sight.number} seed={seed} onSeed={setSeed} />
        <label>
          {DRILLS.sight.style}
          <select value={style} onChange={(event) => setStyle(SIGHT_STYLES.find((name) => name === event.target.value) ?? style)}>
            {SIGHT_STYLES.map((name) => (
              <option key={name} value={name}>
                {MUSIC_TEXTS.style(name)}
              </option>
            ))}
          </select>
        </label>
        <label>
          {DRILLS.sight.difficulty}
          <select
            value={difficulty}
            onChange={(event) => setDifficulty(DIFFICULTIES.find((each) => String(each) === event.target.value) ?? difficulty)}
          >
            {DIFFICULTIES.map((each) => (
              <option key={each} value={each}>
                {DRILLS.sight.difficulties[each]}
              </option>
            ))}
          </select>
        </label>
        <button type="button" className="key" onClick={() => setLeft(LOOK_SECONDS)} disabled={left !== null}>
          {DRILLS.sight.look}
        </button>
      </div>
      {left !== null && (
        <>
          <p role="status">{left > 0 ? DRILLS.sight.looking(left) : DRILLS.sight.kept}</p>
          <ol className="sight-bars">
            {chart.bars.map(({ id, chords }) => (
              <li key={id}>{chords.map(printedChord).join('  ')}</li>
            ))}
          </ol>
        </>
      )}
      <div className="drill-row">
        <button type="button" className="key" onClick={play} disabled={left === null}>
          {DRILLS.sight.play}
        </button>
        {played && (
          <a className="key" href="#/practise">
            {DRILLS.sight.answer}
          </a>
        )}
        <button type="button" className="key" onClick={another}>
          {DRILLS.sight.another}
        </button>
        <button type="button" className="key" onClick={onLeave}>
          {DRILLS.side.leave}
        </button>
      </div>
    </section>
  );
}
