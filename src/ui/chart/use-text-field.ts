import { type RefObject, useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Editing } from '../../state/editing/editing';
import { replaced } from '../../state/editing/history';
import { useDesk, useRun } from '../app/desk-context';

/** The field that holds the chart text, and the ways to write into it from outside. */
export interface TextField {
  readonly ref: RefObject<HTMLTextAreaElement | null>;
  /** Where the caret stands, or the selection begins. */
  readonly caret: number;
  /** Takes the place of the caret over from the field. */
  readonly follow: () => void;
  /** Writes over [from, to) and leaves the caret `caret` characters behind `from`, by default behind what was written. */
  readonly write: (from: number, to: number, text: string, caret?: number) => void;
  /** Writes `before` and `after` around what is selected. */
  readonly around: (before: string, after: string) => void;
  readonly select: (from: number, to: number) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** Joins the field, the desk's text and its history. */
export function useTextField(editing: Editing | null): TextField {
  const run = useRun();
  const ref = useRef<HTMLTextAreaElement>(null);
  const text = useDesk((state) => state.text);
  const [caret, setCaret] = useState(0);
  const wanted = useRef<readonly [number, number] | null>(null);
  const latest = useRef(text);
  latest.current = text;

  const follow = useCallback(() => setCaret(ref.current?.selectionStart ?? 0), []);
  const select = useCallback((from: number, to: number) => {
    ref.current?.focus();
    ref.current?.setSelectionRange(from, to);
    setCaret(from);
  }, []);

  // The caret is put where it belongs once the new text stands in the field.
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs after every change of the text, which it does not read
  useLayoutEffect(() => {
    const place = wanted.current;
    wanted.current = null;
    if (place) select(place[0], place[1]);
  }, [text, select]);

  return useMemo(() => {
    const write = (from: number, to: number, by: string, at = by.length): void => {
      const next = replaced(latest.current, from, to - from, by);
      wanted.current = [from + at, from + at];
      if (next === latest.current) select(from + at, from + at);
      else run({ kind: 'type', text: next });
    };
    const moved = (at: number | null | undefined): void => {
      if (typeof at === 'number') wanted.current = [at, at];
    };
    return {
      ref,
      caret,
      follow,
      write,
      select,
      around: (before, after) => {
        const from = ref.current?.selectionStart ?? latest.current.length;
        const to = ref.current?.selectionEnd ?? from;
        write(from, to, before + latest.current.slice(from, to) + after, before.length + to - from);
      },
      undo: () => moved(editing?.undo()),
      redo: () => moved(editing?.redo()),
    };
  }, [caret, editing, follow, run, select]);
}
