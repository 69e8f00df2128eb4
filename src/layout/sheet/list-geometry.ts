/** Where everything on a pencil list stands, in millimetres from the top left corner of the paper. One page, whatever the chart: type shrinks until it fits. */
import { EDGE_MM, PAPERS, type PaperName } from './paper';
import { type ListBar, type ListSection, listLines, type PencilList } from './pencil-list';

/** Heights of what stands over and under the lines. */
const HEAD_MM = 40;
const FOOT_MM = 16;
/** Left column: letters and sides. */
const LETTER_MM = 30;
/** Height of a line of bars at most, and the space between sections as a share of it. */
const TALLEST_LINE = 30;
const SECTION_GAP = 0.3;
/** Bars that share the width of a line with fewer. */
const USUAL_LINE = 4;

/** One bar with its place. */
export interface ListBarPlace {
  readonly bar: ListBar;
  readonly x: number;
  readonly width: number;
  /** True when a line break may be set or taken away behind it: it is not the last of its section. */
  readonly breakable: boolean;
  /** True when its line ends here. */
  readonly endsLine: boolean;
}

/** One line of bars: the rows in it stand at shares of its height. */
export interface ListLine {
  readonly y: number;
  readonly bars: readonly ListBarPlace[];
}

/** One section: its letter stands at the height of its first line. */
export interface ListBlock {
  readonly section: ListSection;
  readonly y: number;
  readonly lines: readonly ListLine[];
}

/** The page. */
export interface ListGeometry {
  readonly width: number;
  readonly height: number;
  readonly edge: number;
  readonly lineHeight: number;
  readonly blocks: readonly ListBlock[];
  /** Baseline of the explanation of signs. */
  readonly legendY: number;
}

/** The places of a list on a paper, with the player's line breaks. */
export function listGeometry(list: PencilList, breaks: readonly number[] | null, paper: PaperName): ListGeometry {
  const { width, height } = PAPERS[paper];
  const sections = list.sections.map((section) => ({ section, lines: listLines(section, breaks) }));
  const rows = sections.reduce((sum, { lines }) => sum + lines.length + SECTION_GAP, 0);
  const room = height - 2 * EDGE_MM - HEAD_MM - FOOT_MM;
  const lineHeight = Math.min(TALLEST_LINE, room / Math.max(rows, 1));
  let y = EDGE_MM + HEAD_MM;
  const blocks = sections.map(({ section, lines }): ListBlock => {
    const top = y;
    const placed = lines.map((bars): ListLine => {
      const line = { y, bars: placeBars(bars, section, width - 2 * EDGE_MM - LETTER_MM) };
      y += lineHeight;
      return line;
    });
    y += SECTION_GAP * lineHeight;
    return { section, y: top, lines: placed };
  });
  return { width, height, edge: EDGE_MM, lineHeight, blocks, legendY: height - EDGE_MM - 4 };
}

function placeBars(bars: readonly ListBar[], section: ListSection, width: number): ListBarPlace[] {
  const shares = bars.reduce((sum, bar) => sum + Math.max(0.5, bar.length), 0);
  const unit = width / Math.max(USUAL_LINE, shares);
  let x = EDGE_MM + LETTER_MM;
  return bars.map((bar, i) => {
    const place = {
      bar,
      x,
      width: unit * Math.max(0.5, bar.length),
      breakable: bar !== section.bars.at(-1),
      endsLine: i === bars.length - 1,
    };
    x += place.width;
    return place;
  });
}
