import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import { inputMillis } from '../../src/vocabulary';
import { chartText, deskBench, turns } from './desk-fixture';

const GOOD = chartText('Low Tide');
const FAULTY = `${GOOD}| H7 |\n`;

async function opened(text = GOOD) {
  const bench = deskBench();
  await bench.desk.restore();
  bench.desk.run({ kind: 'type', text });
  await bench.settle();
  return bench;
}

describe('The desk', () => {
  it('lies ready with the first demo, its clave, its tempo as the goal and a calmer tempo to begin with', () => {
    const { desk } = deskBench();
    const { music, settings, chartId, faults } = desk.desk.getState();
    expect(chartId).toBe('demo-last-ferry');
    expect(faults).toEqual([]);
    expect(music?.score.title).toBe('Last Ferry');
    expect(settings).toMatchObject({ direction: '2-3', kind: 'son', level: 2, tempo: 64, goalTempo: 92 });
  });

  it('makes the music of a first visit once, not again when nothing was found to be kept', async () => {
    const { desk } = deskBench();
    const { music } = desk.desk.getState();
    await desk.restore();
    expect(music).not.toBeNull();
    expect(desk.desk.getState().music).toBe(music);
  });

  it('keeps the last good music and every character of faulty text', async () => {
    const { desk } = await opened();
    const before = desk.desk.getState().music;
    desk.run({ kind: 'type', text: FAULTY });
    const after = desk.desk.getState();
    expect(after.text).toBe(FAULTY);
    expect(after.faults).toHaveLength(1);
    expect(after.music).toBe(before);
    desk.run({ kind: 'type', text: GOOD });
    expect(desk.desk.getState().faults).toEqual([]);
  });

  it('changes settings while the text is faulty, on the last good music', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'type', text: FAULTY });
    desk.run({ kind: 'exchange sides' });
    const { music, text, faults } = desk.desk.getState();
    expect(music?.score.clave.direction).toBe('3-2');
    expect(faults).toHaveLength(1);
    expect(text).toBe(FAULTY);
  });

  it('follows the clave and the goal when the text gives another', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'type', text: GOOD.replace('2-3 son', '3-2 rumba').replace('half = 92', 'half = 100') });
    expect(desk.desk.getState().settings).toMatchObject({ direction: '3-2', kind: 'rumba', goalTempo: 100 });
  });

  it('arranges a loop as a closed range and keeps the whole form beside it', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'loop cycle', bar: 3 });
    const { music, settings } = desk.desk.getState();
    expect(settings.loop).toEqual({ fromBar: 2, toBar: 4 });
    expect(music?.score).toMatchObject({ closed: true, fromTick: 3840, toTick: 7680 });
    expect(music?.whole.bars).toHaveLength(8);
    expect(music && desk.scoreOf(music.performance)).toBe(music?.score);
    desk.run({ kind: 'one bar before' });
    expect(desk.desk.getState().settings.loop).toEqual({ fromBar: 1, toBar: 5 });
    desk.run({ kind: 'loop off' });
    expect(desk.desk.getState().music?.score).toBe(desk.desk.getState().music?.whole);
  });

  it('fits the loop when the form becomes shorter', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'loop bars', loop: { fromBar: 4, toBar: 8 } });
    desk.run({ kind: 'type', text: GOOD.replace('| Gm7 | C7 | F6 | % |', '| Gm7 | C7 |') });
    expect(desk.desk.getState().settings.loop).toEqual({ fromBar: 4, toBar: 6 });
  });

  it('plays the form once with an ending where that is set', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'set', settings: { round: 'once, then end' } });
    expect(desk.desk.getState().music?.performance.closed).toBe(false);
  });

  it('makes nothing anew when only the balance, the tempo or the view changes', async () => {
    const { desk } = await opened();
    const before = desk.desk.getState().music;
    desk.run({ kind: 'mute', part: 'bass', muted: true });
    desk.run({ kind: 'step tempo', by: 1 });
    desk.run({ kind: 'set', settings: { view: 'staff' } });
    expect(desk.desk.getState().music).toBe(before);
  });

  it('taps a tempo', async () => {
    const { desk } = await opened();
    for (const at of [0, 600, 1200]) desk.run({ kind: 'tap', at: inputMillis(at) });
    expect(desk.desk.getState().settings.tempo).toBe(100);
  });

  it('holds tempo and level within what is offered', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'step tempo', by: 500 });
    desk.run({ kind: 'step tempo', by: -500, goal: true });
    for (let step = 0; step < 9; step += 1) desk.run({ kind: 'step level', by: 1 });
    expect(desk.desk.getState().settings).toMatchObject({ tempo: 140, goalTempo: 25, level: 6 });
  });

  it('gives another figure for the same chart and settings', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'another one' });
    expect(desk.desk.getState().settings.seed).toBe(1);
  });

  it('says why a file was not made, until the next one is', async () => {
    let broken = true;
    const midi = async (): Promise<Uint8Array> => {
      if (broken) throw new Error('the part that writes files could not be fetched');
      return new Uint8Array([77, 84, 104, 100]);
    };
    const { desk, saved, settle } = deskBench({ ports: { midi } });
    desk.run({ kind: 'save midi' });
    await settle();
    expect(desk.desk.getState()).toMatchObject({ unsaved: 'the part that writes files could not be fetched', trouble: null });
    broken = false;
    desk.run({ kind: 'save midi' });
    await settle();
    expect(desk.desk.getState().unsaved).toBeNull();
    expect(saved.map(({ type }) => type)).toEqual(['audio/midi']);
  });

  it('says why a chart gives no music and keeps the last good music', () => {
    let broken = false;
    const sound = deskBench({
      ports: {
        stages: {
          readChart,
          perform,
          arrange: (chart, options) => {
            if (broken) throw new Error('no voicing within the stretch');
            return arrange(chart, options);
          },
        },
      },
    });
    const before = sound.desk.desk.getState().music;
    broken = true;
    sound.desk.run({ kind: 'step level', by: 1 });
    expect(sound.desk.desk.getState().trouble).toBe('no voicing within the stretch');
    expect(sound.desk.desk.getState().music).toBe(before);
    broken = false;
    sound.desk.run({ kind: 'step level', by: -1 });
    expect(sound.desk.desk.getState().trouble).toBeNull();
  });

  it('plays the quick line at once, and says what is wrong with a faulty one', async () => {
    const { desk, player } = deskBench();
    desk.run({ kind: 'play quick', line: 'Gm7 C7 F6 D7' });
    await turns();
    expect(desk.desk.getState()).toMatchObject({ chartId: 'quick', quickFaults: [] });
    expect(player.calls).toContain('play');
    const before = desk.desk.getState().music;
    desk.run({ kind: 'play quick', line: 'Gm7 H7' });
    await turns();
    expect(desk.desk.getState().quickFaults.length).toBeGreaterThan(0);
    expect(desk.desk.getState().music).toBe(before);
  });

  it('saves MIDI and chart text under names that say what is inside', async () => {
    const { desk, saved } = await opened();
    desk.run({ kind: 'save midi' });
    const { chartId } = desk.desk.getState();
    (await desk.rooms.library()).saveText(chartId);
    await turns();
    expect(saved.map(({ name, type }) => [name, type])).toEqual([
      [expect.stringMatching(/^low-tide.*2-3.*\.mid$/), 'audio/midi'],
      ['low-tide.chart.txt', 'text/plain;charset=utf-8'],
    ]);
    expect(new TextDecoder().decode(saved[1]?.bytes)).toBe(GOOD);
  });

  it('spells the twelve keys for the chart, from its own upward', () => {
    const { desk } = deskBench();
    const chart = desk.desk.getState().music?.chart;
    // Common practice, no source: the customary one of two enharmonic keys.
    expect(chart && desk.keysOf(chart)).toEqual(['D', 'E♭', 'E', 'F', 'G♭', 'G', 'A♭', 'A', 'B♭', 'B', 'C', 'D♭']);
  });

  it('reads a very long chart only when typing pauses, and loses nothing of it', async () => {
    const bench = await opened();
    const long = `${GOOD}${'| C | G7 | C | G7 |\n'.repeat(500)}`;
    bench.desk.run({ kind: 'type', text: long });
    expect(bench.desk.desk.getState().text).toBe(long);
    expect(bench.desk.desk.getState().music?.whole.bars).toHaveLength(8);
    bench.timer.pass(200);
    expect(bench.desk.desk.getState().music?.whole.bars).toHaveLength(2008);
  });
});
