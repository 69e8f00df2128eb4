import { type ReactNode, useEffect, useRef, useState } from 'react';
import { PAPERS, type PaperName } from '../../layout/sheet/paper';
import { SHEET_WORDS } from '../../words/sheet';
import { useNear } from '../staff/use-near';

/** One page of a sheet. */
export interface SheetPaperProps {
  readonly paper: PaperName;
  readonly title: string;
  /** From 0, and how many there are. */
  readonly page: number;
  readonly pages: number;
  /** True when everything is about to be printed. */
  readonly all: boolean;
  /** What stands on it; `shown` is false as long as the page has never been near the window. */
  readonly children: (shown: boolean) => ReactNode;
}

/**
 * One page in the size of its paper, with title and page number at its foot. Printers and writers of files find it by `data-sheet-page`, which holds its
 * number from 1, and its size in `data-width-mm` and `data-height-mm`.
 */
export function SheetPaper({ paper, title, page, pages, all, children }: SheetPaperProps) {
  const sheet = useRef<HTMLElement>(null);
  const near = useNear(sheet);
  const [seen, setSeen] = useState(near);
  useEffect(() => {
    if (near) setSeen(true);
  }, [near]);
  const { width, height } = PAPERS[paper];
  return (
    <article
      ref={sheet}
      className="sheet-page"
      data-sheet-page={page + 1}
      data-width-mm={width}
      data-height-mm={height}
      style={{ width: `${width}mm`, height: `${height}mm` }}
      aria-label={SHEET_WORDS.page(page + 1, pages)}
    >
      {children(seen || near || all)}
      <div className="sheet-foot">
        <span>{title}</span>
        <span>{SHEET_WORDS.page(page + 1, pages)}</span>
      </div>
    </article>
  );
}
