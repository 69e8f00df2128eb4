/** Papers that the sheet prints on, in millimetres: ISO 216 A4 and ANSI/ASME Y14.1 size A (Letter, 8.5 × 11 inches). */
export const PAPERS = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const;
/** A paper by its name. */
export type PaperName = keyof typeof PAPERS;
/** The papers in the order they are offered. */
export const PAPER_NAMES = ['A4', 'Letter'] as const satisfies readonly PaperName[];

/** White edge on all sides; printers reach everything inside it. */
export const EDGE_MM = 12.5;
/** Size of a staff unit on paper: a staff of 40 units is 6.52 mm high. */
export const UNIT_MM = 0.163;

/** Width of the printed area, in staff units. */
export const paperUnits = (paper: PaperName): number => Math.floor((PAPERS[paper].width - 2 * EDGE_MM) / UNIT_MM);

/** Room for the line with title and page number at the foot of every page. */
const FOOT_MM = 5;

/** Height for blocks on a page, in millimetres. */
export const pageRoom = (paper: PaperName): number => PAPERS[paper].height - 2 * EDGE_MM - FOOT_MM;
