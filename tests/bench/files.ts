import { makeLink } from '../../src/exchange/link/make-link';
import { readLink } from '../../src/exchange/link/read-link';
import { writeMidi } from '../../src/exchange/midi/write-midi';
import { writeMusicXml } from '../../src/exchange/musicxml/write-musicxml';
import { scoreOf } from './arrange';
import { BENCH_SEED, benchChart } from './bench-chart';
import { copyMs, mediansMs, overFloor, type Results } from './measure';

/** Files of a 100-bar chart. The floor writes the same Score as JSON; that of the link is a copy of its characters. */
export function measureFiles(): Results {
  const text = benchChart(100, BENCH_SEED);
  const score = scoreOf(text);
  const json = () => JSON.stringify(score);
  const [midiMs, jsonMs] = mediansMs(() => writeMidi(score), json, 60);
  const [musicXmlMs, jsonAgainMs] = mediansMs(() => writeMusicXml(score), json, 30);
  const lesson = {
    text: benchChart(32, BENCH_SEED),
    settings: { direction: '2-3', level: 3, tempo: 72, goalTempo: 92 },
    note: 'Slowly, left hand first.',
  };
  const made = makeLink(lesson);
  if (!made.ok) throw new Error("the bench's own lesson does not fit a link");
  const [makeLinkMs, readLinkMs] = mediansMs(
    () => makeLink(lesson),
    () => readLink(`#${made.value.replace(/^#/, '')}`),
    200,
  );
  const is = 'JSON.stringify of the same Score';
  return {
    writeMidi100Ms: overFloor(midiMs, jsonMs, is),
    midiBytes: writeMidi(score).length,
    writeMusicXml100Ms: overFloor(musicXmlMs, jsonAgainMs, is),
    makeLinkMs: overFloor(makeLinkMs, copyMs(made.value.length), 'copying the characters of the link'),
    readLinkMs: overFloor(readLinkMs, copyMs(made.value.length), 'copying the characters of the link'),
    linkCharacters: made.value.length,
  };
}
