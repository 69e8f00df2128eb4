import { describe, expect, it } from 'vitest';
import { readScoreInThread, type ScoreThread } from '../../src/device/musicxml-reader';
import type { ScoreMessage } from '../../src/device/workers/musicxml-messages';
import { readMusicXml } from '../../src/exchange/musicxml/read-musicxml';
import { createMusicXmlImport, sheetReader } from '../../src/state/import/import-musicxml';
import { attributes, bytesOf, file, measure } from '../exchange/musicxml/lead-sheet-file';

const SHEET = bytesOf(file('Low Tide', measure(1, ['C'], { first: attributes(0, 'major') }) + measure(2, ['F', 'G7'])));

/** A thread that answers as told, and remembers whether it was ended. */
function thread(answer: (self: ScoreThread, file: { bytes: Uint8Array; name: string }) => void): ScoreThread & { ended: boolean } {
  const self = {
    ended: false,
    onmessage: null,
    onerror: null,
    postMessage: (message: { bytes: Uint8Array; name: string }) => answer(self, message),
    terminate: () => {
      self.ended = true;
    },
  } as ScoreThread & { ended: boolean };
  return self;
}
const say = (self: ScoreThread, data: ScoreMessage) => self.onmessage?.call(self as Worker, new MessageEvent('message', { data }));

describe('reading a score in a thread', () => {
  it('tells how far it is, gives what was found and ends the thread', async () => {
    const shares: number[] = [];
    const working = thread((self, { bytes, name }) => {
      say(self, { kind: 'done', result: readMusicXml(bytes, name, (share) => say(self, { kind: 'progress', share })) });
    });
    const reading = await readScoreInThread(
      { bytes: SHEET, name: 'low.xml' },
      (share) => shares.push(share),
      1000,
      () => working,
    );
    expect(reading).toMatchObject({ kind: 'read', result: { ok: true, value: { title: 'Low Tide' } } });
    expect(shares).toEqual([1]);
    expect(working.ended).toBe(true);
  });

  it('stops a thread that takes too long, one that fails, and says when none can be started', async () => {
    const silent = thread(() => {});
    expect(
      await readScoreInThread(
        { bytes: SHEET, name: 'x' },
        () => {},
        5,
        () => silent,
      ),
    ).toEqual({ kind: 'too long' });
    expect(silent.ended).toBe(true);
    const failing = thread((self) => self.onerror?.call(self as Worker, new Event('error') as ErrorEvent));
    expect(
      await readScoreInThread(
        { bytes: SHEET, name: 'x' },
        () => {},
        1000,
        () => failing,
      ),
    ).toMatchObject({ kind: 'failed' });
    expect(failing.ended).toBe(true);
    const none = (): ScoreThread => {
      throw new Error('no threads here');
    };
    expect(await readScoreInThread({ bytes: SHEET, name: 'x' }, () => {}, 1000, none)).toEqual({
      kind: 'failed',
      reason: 'no threads here',
    });
  });
});

describe('the import', () => {
  const reading = createMusicXmlImport(async ({ bytes, name }) => ({ kind: 'read', result: readMusicXml(bytes, name) }));

  it('gives chart text, title and what was not taken over, and sentences for the library', async () => {
    expect(await reading(SHEET, 'low.xml')).toMatchObject({ ok: true, value: { title: 'Low Tide', notTaken: [{ code: 'notes' }] } });
    expect(await sheetReader(reading)({ name: 'low.xml', bytes: SHEET })).toMatchObject({
      ok: true,
      value: { text: expect.stringContaining('| C | F G7 |'), leftOut: ['A chart holds chords: 4 notes were left out.'] },
    });
  });

  it('gives one sentence when the file is none, when it took too long, and when the thread failed or the reader threw', async () => {
    const sentence = async (read: Parameters<typeof createMusicXmlImport>[0]): Promise<string> => {
      const result = await sheetReader(createMusicXmlImport(read))({ name: 'x.xml', bytes: bytesOf('no') });
      return result.ok ? 'read' : result.faults.map((fault) => fault.sentence).join('|');
    };
    expect(await sentence(async ({ bytes, name }) => ({ kind: 'read', result: readMusicXml(bytes, name) }))).toMatch(
      /^This is no score file\./,
    );
    expect(await sentence(async () => ({ kind: 'too long' }))).toMatch(/^Reading the file took too long and was stopped\./);
    expect(await sentence(async () => ({ kind: 'failed', reason: 'gone' }))).toMatch(/^Reading the file stopped “gone”\./);
    expect(await sentence(() => Promise.reject(new Error('lost')))).toMatch(/^Reading the file stopped “lost”\./);
  });
});
