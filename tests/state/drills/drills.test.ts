// long because every drill is played through here
import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { Performance } from '../../../src/performance/performance';
import { BOARD_DRILLS, demandsOf } from '../../../src/state/drills/board-drill';
import { createDrills } from '../../../src/state/drills/drills';
import { type Band, type Listening, type ListeningState, type PlayedPart, WHOLE_BAND } from '../../../src/state/listening/listening-state';
import { deskBench } from '../desk-fixture';

function bench() {
  const { desk } = deskBench();
  let band: Band = WHOLE_BAND;
  let plays: PlayedPart = 'both hands';
  let played: Performance | null = null;
  const store = createStore(() => ({ ratings: [], report: null, plays: 'both hands' }) as unknown as ListeningState);
  const listening = {
    store,
    setBand: (change: Partial<Band>) => {
      band = { ...band, ...change };
    },
    set: (change: { plays?: PlayedPart }) => {
      plays = change.plays ?? plays;
      store.setState(change);
    },
    playMusic: (music: Performance) => {
      played = music;
    },
  } as unknown as Listening;
  const ended: [string, number, number, number | null][] = [];
  const drills = createDrills({ desk, listening, onEnd: (...how) => ended.push(how) });
  return {
    desk,
    drills,
    store,
    ended,
    played: () => played,
    band: () => band,
    plays: () => plays,
    settings: () => desk.desk.getState().settings,
  };
}

const report = (id: number, clean: boolean) =>
  ({
    id,
    wholePass: true,
    interrupted: null,
    assessment: { clean },
    matched: { strokes: [] },
    take: { music: { performance: { bars: [] } } },
  }) as never;

describe('Drills on the board', () => {
  it.each(BOARD_DRILLS)('%s puts everything back when it ends', (name) => {
    const { drills, settings, band, plays } = bench();
    const before = settings();
    drills.begin(name);
    for (const clean of [true, true, false, true, true, true, false]) drills.rate(clean);
    drills.end();
    expect(settings()).toEqual(before);
    expect(band()).toEqual(WHOLE_BAND);
    expect(plays()).toBe('both hands');
  });

  // Up after three clean passes of four, down after two that were not: the ladder's own rule (tests/practice has its sources).
  it('the ladder moves the tempo of the desk with the passes that are judged, and with ratings', () => {
    const { drills, desk, settings, store, ended } = bench();
    desk.run({ kind: 'set', settings: { tempo: 60 as never, goalTempo: 92 as never } });
    drills.begin('tempo ladder');
    expect(settings().tempo).toBe(60);
    for (let pass = 1; pass <= 3; pass += 1) store.setState({ report: report(pass, true) });
    expect(settings().tempo).toBe(62);
    store.setState({ report: report(4, false) });
    store.setState({ ratings: ['not yet'] });
    expect(settings().tempo).toBe(60);
    drills.end();
    expect(ended).toEqual([['tempo ladder', 3, 5, null]]);
  });

  it('a pass that was interrupted, or only part of one, does not count', () => {
    const { drills, store } = bench();
    drills.begin('hands apart');
    store.setState({ report: { ...(report(1, true) as object), wholePass: false } as never });
    store.setState({ report: { ...(report(2, true) as object), interrupted: 'page was away' } as never });
    expect(drills.store.getState().passes).toBe(0);
  });

  it('twelve keys go through all twelve, each a fourth up, and are done', () => {
    const { drills, settings } = bench();
    drills.begin('twelve keys');
    const heard = [settings().transpose];
    for (let key = 0; key < 12; key += 1) {
      drills.rate(true);
      heard.push(settings().transpose);
    }
    expect(new Set(heard.slice(0, 12)).size).toBe(12);
    expect(heard.slice(0, 4)).toEqual([0, 5, 10, 3]);
    expect(drills.store.getState().done).toBe(true);
  });

  it('the gap leaves the band out, and longer after each clean one', () => {
    const { drills, band } = bench();
    drills.begin('gap');
    expect(band().gap).toEqual({ on: 4, off: 1 });
    drills.rate(true);
    expect(band().gap).toEqual({ on: 4, off: 2 });
  });

  it('the gap tells the drift each time the band comes back, and the largest decides', () => {
    const { drills, store, band } = bench();
    drills.begin('gap');
    // Four bars on, one off. Steps of 200 ms; the last bar of each gap is played later, or earlier, than the bar before it.
    const stroke = (bar: number, deviationMs: number) => ({ playTick: bar * 1920, deviationMs, expected: { stepMs: 200 } });
    const heard = (...strokes: ReturnType<typeof stroke>[]) =>
      ({
        ...(report(strokes.length, true) as object),
        matched: { strokes },
        take: { music: { performance: { bars: [{ ticks: 1920 }] } }, fromPlayTick: 0 },
      }) as never;
    store.setState({ report: heard(stroke(3, 0), stroke(4, 30), stroke(8, 10), stroke(9, -240)) });
    expect(drills.store.getState().behindMs).toEqual([null, -250]);
    // A quarter of a beat and more: the gap stays at its shortest. Small ones alone make it longer.
    expect(band().gap).toEqual({ on: 4, off: 1 });
    store.setState({ report: heard(stroke(3, 0), stroke(4, 30), stroke(8, 10), stroke(9, -20), stroke(13, 0)) });
    expect(drills.store.getState().behindMs).toEqual([null, null]);
    expect(band().gap).toEqual({ on: 4, off: 2 });
  });

  it('clapping goes through son and rumba from both sides', () => {
    const { drills, settings } = bench();
    drills.begin('clap the clave');
    const claves = new Set<string>();
    for (let pass = 0; pass < 12; pass += 1) {
      claves.add(`${settings().kind} ${settings().direction}`);
      drills.rate(true);
    }
    expect([...claves].sort()).toEqual(['rumba 2-3', 'rumba 3-2', 'son 2-3', 'son 3-2']);
    expect(drills.store.getState().done).toBe(true);
  });

  it('every demand names parts that a band has', () => {
    for (const name of BOARD_DRILLS) {
      const { drills } = bench();
      drills.begin(name);
      const { running } = drills.store.getState();
      expect(running && ['both hands', 'left hand', 'right hand', 'clave'].includes(demandsOf(running).plays)).toBe(true);
      drills.end();
    }
  });
});

describe('Which side?', () => {
  it('asks, takes answers, and leaves the desk as it was', () => {
    const { drills, desk, settings } = bench();
    const before = settings();
    const side = drills.side(5);
    for (let question = 0; question < 6; question += 1) {
      side.hear();
      const asked = side.store.getState().drill.question;
      expect(settings().direction).toBe(asked.direction);
      expect(settings().countInBars).toBe(0);
      const bar = desk.playing.getState().startBar;
      expect(desk.desk.getState().music?.score.form.bars[bar]?.side).toBe(asked.starts);
      side.say(asked.starts);
    }
    expect(side.leave()).toEqual({ right: 6, of: 6 });
    expect(settings()).toEqual(before);
  });
});

describe('Fast changes', () => {
  it('loop the two bars with the most chords', () => {
    const { drills, desk, settings } = bench();
    desk.run({ kind: 'type', text: '| Dm7 | G7 | Cmaj7 A7 | Dm7 G7 | Cmaj7 | % | Cmaj7 | % |' });
    drills.begin('fast changes');
    expect(settings().loop).toEqual({ fromBar: 2, toBar: 4 });
    drills.end();
    expect(settings().loop).toBeNull();
  });
});

describe('Lost and found', () => {
  /** A report over [from, to) bars of the music: right everywhere but in the bars named. */
  const heard = (music: Performance, from: number, to: number, lostBars: readonly number[]) => ({
    report: {
      take: { music: { performance: music }, toPlayTick: music.bars[to]?.tick ?? music.toTick },
      interrupted: null,
      matched: {
        strokes: music.bars.slice(from, to).map(({ tick }, index) => ({
          expected: {},
          playTick: tick,
          label: lostBars.includes(from + index) ? 'missed' : 'right',
        })),
        stretches: [{ fromPlayTick: 0, toPlayTick: music.toTick, displacedSteps: 0, crossed: false }],
      },
    } as never,
  });

  it('counts the bars until the player is back after each surprise that was heard', () => {
    const { drills, store, played, band } = bench();
    const drill = drills.surprise(5);
    const music = played();
    if (!drill || !music) throw new Error('the first demo is long enough for surprises');
    expect(band().piano).toBe('mine');
    const [first, second] = drill.surprises;
    if (!first || !second) throw new Error('seed 5 makes two surprises at least');
    expect(drill.found(), 'nothing was heard yet').toEqual([]);
    store.setState(heard(music, 0, 8, []));
    store.setState(
      heard(
        music,
        8,
        music.bars.length,
        [first.atBar, first.atBar + 1].filter((bar) => bar >= 8),
      ),
    );
    const found = drill.found();
    expect(found).toHaveLength(drill.surprises.length);
    expect(found[0]).toBe(first.atBar >= 8 ? 2 : 0);
    expect(found[1]).toBe(0);
  });

  it('is written down by the player’s own word, and hears nothing more once it is left', () => {
    const { drills, store, played, ended, band } = bench();
    const drill = drills.surprise(5);
    const music = played();
    if (!drill || !music) throw new Error('the first demo is long enough for surprises');
    drills.endSurprise();
    store.setState(heard(music, 0, music.bars.length, []));
    expect(drill.found()).toEqual([]);
    expect(band()).toEqual(WHOLE_BAND);
    drills.rateSurprises(1, 2, 5);
    expect(ended).toEqual([['lost and found', 1, 2, 5]]);
  });

  it('is not offered where the form is too short', () => {
    const { drills, desk } = bench();
    desk.run({ kind: 'type', text: 'title: Short\nclave: 2-3 son\n[A]\n| Em7 | A7 | D6 | D6 |\n' });
    expect(drills.surprise(1)).toBeNull();
  });
});

it('Which side? is told with its number when something was asked, and not when nothing was', () => {
  const { drills, ended } = bench();
  drills.side(3).leave();
  expect(ended).toEqual([]);
  const drill = drills.side(3);
  drill.say(2);
  drill.leave();
  expect(ended).toEqual([['which side', expect.any(Number), 1, 3]]);
});
