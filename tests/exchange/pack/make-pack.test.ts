import { unzipSync } from 'fflate';
import { parseMidi } from 'midi-file';
import { describe, expect, test } from 'vitest';
import { contentsPage } from '../../../src/exchange/pack/contents-page';
import { type PackMakers, packEntries, zipPack } from '../../../src/exchange/pack/make-pack';
import { bytesOf, PACK_KINDS, type PackOrder, packFiles } from '../../../src/exchange/pack/pack-order';
import { speakAs, speechNow } from '../../../src/exchange/speech';
import { madeSounds } from '../../../src/exchange/wav/pcm';
import { PLAIN_LEVELS, PLAY_ALONGS } from '../../../src/exchange/wav/play-along';
import { readChart } from '../../../src/music/chart/read';
import { arrange } from '../../../src/music/score';
import { halfNotesPerMinute } from '../../../src/vocabulary';
import { onsetsOf, readWav } from '../wav/read-wav';

const CHART = 'title: Last Ferry <b>"twice"</b>\nkey: D\nclave: 2-3 son\ntempo: half = 92\n[A]\n| Em7 | A7 | D6 | B7b9 |\n';
const DATE = new Date(2026, 10, 25, 12);

function order(more: Partial<PackOrder> = {}): PackOrder {
  const read = readChart(CHART);
  if (!read.ok) throw new Error('the chart of the test has a fault');
  const scores = [0, 3].map((transpose) => arrange(read.value, { transpose }));
  return {
    scores,
    sounding: scores,
    tempi: [halfNotesPerMinute(92)],
    kinds: PACK_KINDS,
    playAlongs: PLAY_ALONGS,
    form: 'loop',
    levels: PLAIN_LEVELS,
    rate: 44_100,
    date: '2026-11-25',
    ...more,
  };
}
const MAKERS: PackMakers = { sounds: madeSounds, sheet: async (key) => Uint8Array.from([37, 80, 68, 70, key]) };

async function packed(asked: PackOrder, makers = MAKERS, onProgress?: (share: number) => void) {
  const pieces: Uint8Array[] = [];
  for await (const piece of zipPack(packEntries(asked, makers, onProgress), DATE)) pieces.push(piece);
  return unzipSync(new Uint8Array(Buffer.concat(pieces)));
}

describe('a pack', () => {
  test('is a zip in which another reader finds the contents page and every file by key, whole', async () => {
    const asked = order();
    const shares: number[] = [];
    const files = await packed(asked, MAKERS, (share) => shares.push(share));
    const names = Object.keys(files);
    expect(names[0]).toBe('contents.html');
    expect(names.slice(1)).toEqual(packFiles(asked).map(({ name }) => name));
    expect(names).toHaveLength(1 + 2 * (1 + 1 + 1 + 3));
    expect(names[1]).toMatch(/^01_D\/last-ferry.*_D_2-3-son_level-2\.pdf$/);
    expect(names.at(-1)).toMatch(/^02_F\/.*_half-92_piano-only\.wav$/);
    for (const [name, bytes] of Object.entries(files)) {
      if (name.endsWith('.mid')) expect(parseMidi(bytes).header.ticksPerBeat).toBe(480);
      if (name.endsWith('.pdf')) expect([...bytes]).toEqual([37, 80, 68, 70, name.startsWith('01') ? 0 : 1]);
      if (name.endsWith('.musicxml')) expect(new TextDecoder().decode(bytes)).toContain('<score-partwise version="4.0">');
      // 4 bars at 92 half notes a minute: 8 × 60/92 s.
      if (name.endsWith('.wav')) expect(readWav(bytes).left.length).toBe(Math.round(((8 * 60) / 92) * 44_100));
    }
    expect(shares.every((share, at) => share >= (shares[at - 1] ?? 0) && share <= 1)).toBe(true);
    expect(shares.at(-1)).toBeGreaterThan(0.99);
  });

  test('foretells the size of its sounds to the byte', async () => {
    for (const form of ['loop', 'once'] as const) {
      const asked = order({ form, kinds: ['wav'], playAlongs: ['full'] });
      const files = await packed(asked);
      for (const file of packFiles(asked)) expect(Math.abs(bytesOf(file, asked) - (files[file.name]?.length ?? 0))).toBeLessThanOrEqual(48);
    }
  });

  test('has play-alongs for everyone, without piano, and of the piano alone', async () => {
    const files = await packed(order({ kinds: ['wav'] }));
    const sound = (kind: string) =>
      readWav(Object.entries(files).find(([name]) => name.includes(`_${kind}.wav`))?.[1] ?? new Uint8Array()).left;
    const [full, without, alone] = PLAY_ALONGS.map(sound);
    let most = 0;
    for (let at = 0; at < (full?.length ?? 0); at += 1)
      most = Math.max(most, Math.abs((full?.[at] ?? 0) - (without?.[at] ?? 0) - (alone?.[at] ?? 0)));
    // Below the ceiling's knee the two halves add up to the whole, but for rounding.
    expect(most).toBeLessThanOrEqual(2);
    expect(onsetsOf(alone ?? new Int16Array()).length).toBeGreaterThan(0);
  });

  test('says what is in it, with titles that cannot become part of the page', () => {
    const asked = order();
    const page = contentsPage(asked, packFiles(asked));
    expect(page).toContain('Last Ferry &lt;b&gt;&quot;twice&quot;&lt;/b&gt;');
    expect(page).not.toContain('<b>');
    const links = [...page.matchAll(/href="([^"]+)"/g)].map(([, link = '']) => decodeURIComponent(link));
    expect(links).toEqual(packFiles(asked).map(({ name }) => name));
    for (const words of ['D major', 'F major', 'without piano', 'go round without a seam', 'Clave 2-3 son']) expect(page).toContain(words);
  });

  test('speaks as it is told, in a thread that knew nothing of it', async () => {
    const asked = order();
    expect(contentsPage(asked, packFiles(asked))).toContain('<html lang="en">');
    await speakAs({ language: 'es', noteNames: 'do re mi' });
    const page = contentsPage(asked, packFiles(asked));
    await speakAs({ language: 'en', noteNames: 'letters' });
    for (const words of ['<html lang="es">', 'Re mayor', 'Fa mayor', 'sin piano', 'Clave 2-3 de son']) expect(page).toContain(words);
    expect(speechNow()).toEqual({ language: 'en', noteNames: 'letters' });
  });

  test('that breaks off half-way asks its makers for nothing more', async () => {
    const asked: number[] = [];
    const entries = packEntries(order({ kinds: ['sheet', 'wav'] }), { ...MAKERS, sheet: async (key) => Uint8Array.of(asked.push(key)) });
    let bytes = 0;
    for await (const piece of zipPack(entries, DATE)) {
      bytes += piece.length;
      if (bytes > 200_000) break;
    }
    expect(asked).toEqual([0]);
  });
});
