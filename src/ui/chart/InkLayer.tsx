import { memo } from 'react';
import type { ChartFault } from '../../music/chart/chart';
import { type Token, tokensOf } from '../../state/editing/tokens';

/** Lines drawn beyond those in sight, so that a quick flick shows text at once. */
const SPARE = 12;

/**
 * The chart text drawn in inks, under the field that is typed in: what each piece is, and a wavy line under every fault. It is decoration:
 * the field itself holds the text for hands, screen readers and the device's own keyboard.
 */
export const InkLayer = memo(function InkLayer(props: {
  readonly text: string;
  readonly faults: readonly ChartFault[];
  /** First line in sight, from 0, and how many are. */
  readonly top: number;
  readonly rows: number;
}) {
  const lines = props.text.split('\n');
  const from = Math.max(0, props.top - SPARE);
  const shown = lines.slice(from, props.top + props.rows + SPARE);
  return (
    <>
      {shown.map((line, index) => {
        const number = from + index;
        const faults = props.faults.filter((fault) => fault.line === number + 1);
        return (
          <span key={number} className="ink-line" style={{ top: `calc(${number} * var(--line-height))` }}>
            <InkLine line={line} faults={faults} />
          </span>
        );
      })}
    </>
  );
});

/** A run of one line: its ink, and whether it is faulty. */
interface Run {
  readonly at: number;
  readonly text: string;
  readonly ink: Token['kind'] | 'blank';
  readonly faulty: boolean;
}

function InkLine({ line, faults }: { readonly line: string; readonly faults: readonly ChartFault[] }) {
  return runsOf(line, faults).map(({ at, text, ink, faulty }) => (
    <span key={at} className={`ink ink-${ink.replace(' ', '-')}${faulty ? ' ink-fault' : ''}`}>
      {text}
    </span>
  ));
}

function runsOf(line: string, faults: readonly ChartFault[]): Run[] {
  const marked = faults.map(({ column, text }) => {
    const from = Math.min(column - 1, Math.max(0, line.length - 1));
    return [from, from + Math.max(1, text.split('\n')[0]?.length ?? 1)] as const;
  });
  const tokens = tokensOf(line);
  const edges = new Set([0, line.length, ...marked.flat(), ...tokens.flatMap(({ at, text }) => [at, at + text.length])]);
  const places = [...edges].filter((place) => place <= line.length).sort((a, b) => a - b);
  return places.slice(0, -1).map((at, index) => {
    const to = places[index + 1] ?? line.length;
    const token = tokens.find((one) => one.at <= at && at < one.at + one.text.length);
    return { at, text: line.slice(at, to), ink: token?.kind ?? 'blank', faulty: marked.some(([from, end]) => from <= at && at < end) };
  });
}
