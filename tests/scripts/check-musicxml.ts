/**
 * `npm run check:musicxml -- [SCHEMA]`: every demo × 12 keys × levels 1, 2, 4 written as MusicXML, checked against the schema (the argument, or
 * MUSICXML_SCHEMA) and read back by verovio with repeats played out. Prints one JSON object; exit code 1 when anything differs.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeMusicXml } from '../../src/exchange/musicxml/write-musicxml';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { expectedStaves } from '../exchange/musicxml/expected-notes';
import { NO_SCHEMA, schemaCheck } from '../exchange/musicxml/schema';
import { readWithVerovio } from '../exchange/musicxml/verovio-reader';

const KEYS = Array.from({ length: 12 }, (_, semitones) => semitones);
const LEVELS = [1, 2, 4] as const;

const check = schemaCheck(process.argv[2] ?? process.env.MUSICXML_SCHEMA);
if (!check) console.error(NO_SCHEMA);
const folder = mkdtempSync(join(tmpdir(), 'musicxml-'));
const found = {
  files: 0,
  validAgainstSchema: 0,
  loadedWithoutWarning: 0,
  notes: 0,
  notesEqual: 0,
  unpitchedOnsets: 0,
  unpitchedFound: 0,
  faults: [] as string[],
};

for (const demo of DEMO_BOOK) {
  for (const transpose of KEYS) {
    for (const level of LEVELS) {
      const read = readChart(demo.text);
      if (!read.ok) throw new Error(`${demo.id} cannot be read`);
      const score = arrange(read.value, { level, transpose });
      const xml = writeMusicXml(score, { encodingDate: '2026-11-25' });
      const name = `${demo.id} +${transpose} level ${level}`;
      const file = join(folder, 'score.musicxml');
      writeFileSync(file, xml);
      const fault = check?.(file) ?? null;
      if (fault) found.faults.push(`${name}: ${fault}`);
      else if (check) found.validAgainstSchema += 1;
      const back = await readWithVerovio(xml);
      if (back.loaded && back.warnings.length === 0) found.loadedWithoutWarning += 1;
      else found.faults.push(`${name}: ${back.warnings.join(' ')}`);
      const { pitched, unpitched } = expectedStaves(score);
      pitched.forEach((notes, staff) => {
        const got = new Set(back.staves[staff]?.map((note) => JSON.stringify(note)));
        const equal = notes.filter((note) => got.has(JSON.stringify(note))).length;
        found.notes += Math.max(notes.length, got.size);
        found.notesEqual += equal;
        if (equal !== notes.length || got.size !== notes.length)
          found.faults.push(`${name}: staff ${staff + 1}: ${equal} of ${notes.length} notes, ${got.size} read`);
      });
      unpitched.forEach((ticks, part) => {
        const got = new Set(back.staves[pitched.length + part]?.map(({ tick }) => tick));
        found.unpitchedOnsets += ticks.length;
        found.unpitchedFound += ticks.filter((tick) => got.has(tick)).length;
      });
      found.files += 1;
    }
  }
}
rmSync(folder, { recursive: true, force: true });
console.log(JSON.stringify(found, null, 1));
if (found.faults.length > 0 || found.unpitchedFound !== found.unpitchedOnsets) process.exitCode = 1;
