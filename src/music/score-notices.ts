import type { Device, PianoStroke } from '../vocabulary';
import type { ChartNotice, SoundingBar } from './chart/chart';
import type { HarmonicTimeline } from './harmony/timeline';
import type { UnfitEdit } from './montuno/edits';
import type { StyleRow } from './styles/styles';

/** What an arrangement has to say beside the form's own notices: a tempo outside the style, a figure that had to bend or is crossed, an edit that fits nowhere, a device with nothing to do. */
export function arrangeNotices(
  timeline: HarmonicTimeline,
  styleAt: (bar: SoundingBar) => StyleRow,
  rightHand: readonly PianoStroke[],
  found: {
    readonly unfit: readonly UnfitEdit[];
    readonly idle: readonly Device[];
    /** First bar of a cycle that came out crossed, with the direction it states; null when none did. */
    readonly crossed: { readonly bar: number; readonly states: string } | null;
  },
): ChartNotice[] {
  return [
    ...tempoNotices(timeline, styleAt),
    ...bendNotices(timeline, rightHand),
    ...editNotices(timeline, found.unfit),
    ...found.idle.map((device): ChartNotice => ({ code: 'device idle', bar: null, section: null, detail: { device } })),
    ...(found.crossed ? [crossedNotice(timeline, found.crossed)] : []),
  ];
}

/** Said once for each style whose usual range the tempo leaves. */
function tempoNotices({ bars }: HarmonicTimeline, styleAt: (bar: SoundingBar) => StyleRow): ChartNotice[] {
  const said = new Set<string>();
  return bars.flatMap((bar): ChartNotice[] => {
    const { name, tempo } = styleAt(bar);
    if ((bar.tempo >= tempo.from && bar.tempo <= tempo.to) || said.has(name)) return [];
    said.add(name);
    return [
      {
        code: 'tempo outside style',
        bar: bar.index,
        section: bar.section,
        detail: { style: name, tempo: bar.tempo, from: tempo.from, to: tempo.to },
      },
    ];
  });
}

/** Where an own figure asked for inner notes that its chord cannot give. */
function bendNotices({ bars }: HarmonicTimeline, rightHand: readonly PianoStroke[]): ChartNotice[] {
  const own = bars.filter(({ figure }) => figure !== null);
  return own.flatMap((bar): ChartNotice[] => {
    const bent = rightHand.find(
      (stroke) =>
        stroke.tick >= bar.tick &&
        stroke.tick < bar.tick + bar.ticks &&
        (stroke.reason.fallback === 'power chord' || stroke.reason.fallback === 'no inner note fits'),
    );
    return bent
      ? [{ code: 'figure bends', bar: bar.index, section: bar.section, detail: { chord: bent.chord, step: bent.reason.step } }]
      : [];
  });
}

const crossedNotice = (timeline: HarmonicTimeline, { bar, states }: { readonly bar: number; readonly states: string }): ChartNotice => ({
  code: 'figure crossed',
  bar,
  section: timeline.bars.find(({ index }) => index === bar)?.section ?? null,
  detail: { states },
});

function editNotices({ bars }: HarmonicTimeline, unfit: readonly UnfitEdit[]): ChartNotice[] {
  return unfit.map(({ edit, why }) => ({
    code: 'edit out of place',
    bar: edit.bar,
    section: bars.find(({ index }) => index === edit.bar)?.section ?? null,
    detail: { step: edit.step, change: edit.change, why },
  }));
}
