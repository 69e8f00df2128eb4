import assert from 'node:assert/strict';
import { deflateSync, strToU8, zipSync } from 'fflate';
import { type Backup, writeBackup } from '../../src/exchange/backup/backup';
import { mergeWrites, planMerge } from '../../src/exchange/backup/merge';
import { readBackup } from '../../src/exchange/backup/read-backup';
import { toBase64Url } from '../../src/exchange/link/base64url';
import { checksum } from '../../src/exchange/link/checksum';
import { LINK_SETTINGS, LONGEST_NOTE, MOST_UNPACKED } from '../../src/exchange/link/lesson';
import { makeLink } from '../../src/exchange/link/make-link';
import { readLink } from '../../src/exchange/link/read-link';
import { readMusicXml } from '../../src/exchange/musicxml/read-musicxml';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readChart } from '../../src/music/chart/read';
import { type JournalRecord, readRecord, summaryOf, writeRecord } from '../../src/practice/journal';
import { JOURNAL_COLUMNS, type JournalColumn, journalCsv } from '../../src/practice/journal-csv';
import { DEFAULT_SETTINGS } from '../../src/state/settings';
import { settingsFrom } from '../../src/state/settings-record';
import { IMPORT_WORDS } from '../../src/words/import-screen';
import { attributes, bytesOf, file, measure } from '../exchange/musicxml/lead-sheet-file';
import { FIRST_RELEASE } from '../state/stored-releases';
import { target } from './fuzz-target';
import { mutate } from './mutate';
import { mutateBytes, mutateJson } from './mutate-json';

const CHART = DEMO_BOOK[0]?.text ?? '';
const oneOf = <Item>(items: readonly Item[], random: () => number): Item => items[Math.floor(random() * items.length)] as Item;

/** Links: some altered by hand or on the way, some made by a stranger who knows the format. */
export const LINKS = target<string>({
  name: 'links',
  make(random) {
    const lesson = [mutate(CHART, random), { level: 3, tempo: 90, direction: '2-3', transpose: 2 }, 'Slowly, please.'] as const;
    const made = makeLink({ text: lesson[0], settings: lesson[1], note: lesson[2] });
    assert(made.ok, 'a link of a short chart can be made');
    if (random() < 0.4) return random() < 0.1 ? made.value : `#l=${mutate(made.value.slice(3), random)}`;
    const json = strToU8(random() < 0.02 ? 'x'.repeat(200_000) : mutateJson(lesson, random));
    const packed = random() < 0.2 ? mutateBytes(deflateSync(json), random) : deflateSync(json);
    const bytes = new Uint8Array(packed.length + 4);
    new DataView(bytes.buffer).setUint32(0, checksum(json), true);
    bytes.set(packed, 4);
    return `#l=1.${toBase64Url(bytes)}`;
  },
  check(link) {
    const read = readLink(link);
    if (!read.ok) {
      assert.equal(read.faults.length, 1);
      return false;
    }
    const { text, note, settings } = read.value;
    assert(text.length <= MOST_UNPACKED && note.length <= LONGEST_NOTE && !text.includes('\r'));
    for (const name of Object.keys(settings)) assert((LINK_SETTINGS as readonly string[]).includes(name), `a setting named ${name}`);
    const taken = settingsFrom({ ...DEFAULT_SETTINGS, ...settings }, DEFAULT_SETTINGS);
    assert.deepEqual(settingsFrom(JSON.parse(JSON.stringify(taken)), DEFAULT_SETTINGS), taken);
    readChart(text);
    return true;
  },
});

const BACKUP: Backup = {
  made: '2026-11-25T18:00:00.000Z',
  charts: DEMO_BOOK.slice(0, 3).map(({ id, text }, index) => ({ id, title: id, changed: index, text, good: null, settings: null })),
  sets: [{ id: 's1', name: 'Saturday', date: '2026-11-28', charts: ['a1'], changed: 6 }],
  journal: [
    { id: 'j1', at: 7, text: '{}' },
    { id: 'j2', at: 8, text: '' },
  ],
  records: { preferences: FIRST_RELEASE.preferences ?? '', 'settings/demo-last-ferry': '{"record":"settings","version":1,"body":{}}' },
};
const NOTHING: Backup = { made: '', charts: [], sets: [], journal: [], records: {} };

/** Backup files: what is read comes back the same, brings every item, and brings nothing a second time. */
export const BACKUPS = target<string>({
  name: 'backups',
  make: (random) => (random() < 0.3 ? mutate(writeBackup(BACKUP), random) : mutateJson(JSON.parse(writeBackup(BACKUP)), random)),
  check(text) {
    const read = readBackup(text);
    if (!read.ok) {
      assert.equal(read.faults.length, 1);
      return false;
    }
    const { backup, leftOut } = read.value;
    const again = readBackup(writeBackup(backup));
    assert(again.ok && again.value.leftOut.length === 0, 'what was read is written whole');
    assert.equal(writeBackup(again.value.backup), writeBackup(backup));
    const named = JSON.parse(text) as Record<string, unknown>;
    const lists = [named.charts, named.sets, named.journal].map((list) => (Array.isArray(list) ? list.length : 1));
    const kept = backup.charts.length + backup.sets.length + backup.journal.length + Object.keys(backup.records).length;
    const records = typeof named.records === 'object' && named.records !== null && !Array.isArray(named.records) ? named.records : {};
    const there = lists.reduce((sum, length) => sum + length, 0) + Object.keys(records).length;
    assert.equal(kept + leftOut.length, there, 'every item is taken or named as left out');
    const writes = mergeWrites(planMerge(NOTHING, backup), backup, { onDifference: 'keep both', withSettings: true }, () => 'new');
    assert.deepEqual(writes.charts, backup.charts, 'an empty device takes every chart');
    const second = planMerge(backup, backup);
    assert.equal(second.newCharts.length + second.differentCharts.length + second.newSets.length + second.newEntries.length, 0);
    return true;
  },
});

const RECORDS: readonly JournalRecord[] = [
  {
    ...{ kind: 'pass', at: 1_764_000_000_000, chart: 'a', title: 'Low Tide', fromBar: 0, toBar: 4, tempo: 92, level: 3 },
    ...{ direction: '2-3', clean: true, shareRight: 0.94, offsetMs: -3, spreadMs: 12, stepsMs: [1, null, -4], findings: ['early'] },
    source: 'midi',
  },
  { kind: 'check', at: 1_764_000_000_000, chart: 'a', title: 'Low Tide', item: 'a/1', result: 'shaky', daysSince: 3 },
  { kind: 'drill', at: 1_764_000_000_000, chart: 'a', title: 'Low Tide', drill: 'which side', seed: 5, right: 7, of: 8 },
  { kind: 'note', at: 1_764_000_000_000, chart: 'a', title: 'Low Tide', text: '=1+1, "left hand"' },
];
const KINDS = RECORDS.map(({ kind }) => kind);
const HEADINGS = Object.fromEntries(JOURNAL_COLUMNS.map((name) => [name, name])) as Record<JournalColumn, string>;

/** Journal records: what is read can be written, summed up and put into the teacher's file. */
export const JOURNAL = target<string>({
  name: 'journal',
  make: (random) => mutateJson(JSON.parse(writeRecord(oneOf(RECORDS, random))), random),
  check(text) {
    const read = readRecord(text);
    if (!read.ok) return false;
    const record = read.value;
    assert(KINDS.includes(record.kind), `a record of the kind ${record.kind}`);
    const again = readRecord(writeRecord(record));
    assert(again.ok, 'what was read can be written and read');
    assert.deepEqual(again.value, record);
    summaryOf([record]);
    assert(journalCsv([record], HEADINGS, (plain) => plain).endsWith('\r\n'));
    return true;
  },
});

const SCORE = file(
  'Low Tide',
  measure(1, ['C', 'F'], { first: attributes(0, 'major') }) +
    measure(2, ['Am', 'G7'], { last: '<barline location="right"><repeat direction="backward"/></barline>' }) +
    measure(3, ['F#m'], { first: '<direction><direction-type><rehearsal>B</rehearsal></direction-type></direction>' }) +
    measure(4, ['Bb7', 'C'], { last: '<barline location="right"><bar-style>light-heavy</bar-style></barline>' }),
);
const TAGS = [...new Set([...SCORE.matchAll(/<\/?[\w-]+[^>]*>/g)].map(([tag]) => tag))];

/** The same archive in every run. */
const MADE = new Date(2026, 10, 25);

/** Score files, plain and compressed: what is read is a chart without a fault. */
export const SCORES = target<Uint8Array>({
  name: 'musicxml',
  make(random) {
    const way = random();
    if (way < 0.15) return mutateBytes(zipSync({ 's.xml': bytesOf(SCORE) }, { mtime: MADE }), random);
    if (way < 0.3) return mutateBytes(bytesOf(SCORE), random);
    if (way < 0.4) return bytesOf(mutate(SCORE, random));
    // Whole tags and numbers are exchanged, so that the text stays well-formed more often.
    const tags = [...SCORE.matchAll(/>([^<]+)</g)];
    const at = oneOf(tags, random);
    const put = oneOf(['', '-1', '0', '1e9', 'NaN', '64', 'ß', '|:', ']', '\n', 'C', oneOf(TAGS, random)], random);
    const start = (at.index ?? 0) + 1;
    return bytesOf(SCORE.slice(0, start) + put + SCORE.slice(start + (at[1]?.length ?? 0)));
  },
  check(bytes) {
    const read = readMusicXml(bytes, 'low-tide.musicxml');
    if (!read.ok) {
      for (const fault of read.faults) assert(IMPORT_WORDS.fault(fault).length > 0);
      return false;
    }
    const chart = readChart(read.value.text);
    assert(chart.ok, `an imported chart has faults: ${JSON.stringify(chart)}`);
    for (const left of read.value.notTaken) assert(IMPORT_WORDS.notTaken(left).length > 0);
    return true;
  },
});
