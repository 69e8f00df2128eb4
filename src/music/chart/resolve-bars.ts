import type { Chart, Hit, WrittenBar, WrittenChord } from './chart';

/** A bar as it will sound: `%` is replaced by what it repeats. */
export interface PlainBar {
  readonly kind: 'chords' | 'stop' | 'rest';
  /** Empty for a stop and a rest. */
  readonly chords: readonly WrittenChord[];
  readonly hits: readonly Hit[];
  readonly ticks: number;
  /** The chord that goes on when nothing is written on the first beat: the last one before this bar in the order of the text. */
  readonly carried: WrittenChord | null;
}

/** What one written bar stands for: its bars, played `times` over (`rest 8` is one bar eight times, `%%` two bars once). */
export interface ResolvedBar {
  readonly bars: readonly PlainBar[];
  readonly times: number;
}

/** What cannot be resolved, and where: `section` and `bar` are indexes. */
export interface ResolveFault {
  readonly section: number;
  readonly bar: number;
  readonly code: 'nothing to repeat' | 'nothing to hold';
}

/** Resolves every written bar of a chart, section by section, in the order of the text. */
export function resolveBars(sections: Chart['sections']): {
  readonly resolved: readonly (readonly ResolvedBar[])[];
  readonly faults: readonly ResolveFault[];
} {
  const faults: ResolveFault[] = [];
  let before: readonly PlainBar[] = [];
  let carried: WrittenChord | null = null;
  const resolved = sections.map((section, sectionIndex) =>
    section.bars.map((bar, barIndex): ResolvedBar => {
      const result = resolve(bar, before, carried);
      if (result.bars.length === 0) faults.push({ section: sectionIndex, bar: barIndex, code: 'nothing to repeat' });
      const first = result.bars[0];
      if (first?.kind === 'chords' && first.carried === null && first.chords[0]?.tick !== 0)
        faults.push({ section: sectionIndex, bar: barIndex, code: 'nothing to hold' });
      before = lastTwo(before, result.bars);
      for (const plain of result.bars) carried = plain.chords.at(-1) ?? carried;
      return result;
    }),
  );
  return { resolved, faults };
}

const lastTwo = (before: readonly PlainBar[], bars: readonly PlainBar[]): readonly PlainBar[] =>
  bars.length === 0 ? before : bars.length > 1 ? bars.slice(-2) : [...before.slice(-1), ...bars];

function resolve(bar: WrittenBar, before: readonly PlainBar[], carried: WrittenChord | null): ResolvedBar {
  const { content, hits, ticks } = bar;
  switch (content.kind) {
    case 'chords':
      return { bars: [{ kind: 'chords', chords: content.chords, hits, ticks, carried }], times: 1 };
    case 'stop':
      return { bars: [{ kind: 'stop', chords: [], hits, ticks, carried }], times: 1 };
    case 'rest':
      return { bars: [{ kind: 'rest', chords: [], hits, ticks, carried }], times: content.bars };
    case 'repeat': {
      if (before.length < content.bars) return { bars: [], times: 0 };
      const bars = before.slice(-content.bars);
      return { bars: hits.length > 0 ? bars.map((plain) => ({ ...plain, hits })) : bars, times: 1 };
    }
  }
}
