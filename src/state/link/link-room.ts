import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Lesson, LINK_MARK, LINK_SETTINGS, type LinkFault } from '../../exchange/link/lesson';
import { makeLink } from '../../exchange/link/make-link';
import { type QrPath, qrPath } from '../../exchange/link/qr-path';
import { readLink } from '../../exchange/link/read-link';
import type { Chart } from '../../music/chart/chart';
import { readChart } from '../../music/chart/read';
import { unfold } from '../../music/chart/unfold';
import type { Result } from '../../vocabulary';
import { LINK_WORDS } from '../../words/link';
import { titleOf } from '../chart-text';
import { keysOf } from '../keys-of';
import type { DeskOfRoom } from '../library/parts';
import { encode } from '../records';
import { settingsForChart } from '../reduce';
import { DEFAULT_SETTINGS, type Settings } from '../settings';
import { settingsFrom } from '../settings-record';

/** What a link holds, ready to be shown before anything is taken over. */
export interface Offer {
  readonly lesson: Lesson;
  readonly title: string;
  /** Bars as they sound; null while the chart has faults. */
  readonly bars: number | null;
  readonly faults: number;
  /** As printed; null while the chart has faults. */
  readonly key: string | null;
  readonly settings: Settings;
}

/** A link that was made: its whole address, and its code unless that would be too fine to read. */
export interface MadeLink {
  readonly address: string;
  readonly code: QrPath | null;
}

/** What the link room shows. */
export interface LinkState {
  /** What came with the page's address, or why it cannot be opened. */
  readonly visit:
    | { readonly kind: 'none' }
    | { readonly kind: 'offer'; readonly offer: Offer }
    | { readonly kind: 'fault'; readonly fault: LinkFault };
}

/** Makes links and opens them. */
export interface LinkRoom {
  readonly store: StoreApi<LinkState>;
  /** The link for the chart on the desk under its settings, with a teacher's words. */
  readonly make: (note: string, page: string) => MadeLink | LinkFault;
  /** Reads the part of an address behind `#`; what is no link of ours is left alone. Nothing that is saved is touched. */
  readonly look: (hash: string) => void;
  readonly leave: () => void;
  /** Puts what the link holds on the shelf and opens it. */
  readonly take: () => void;
}

/** The whole address of a link on the page it is made on, with its code; or why there is none. */
export function madeLink(link: Result<string, LinkFault>, page: string): MadeLink | LinkFault {
  if (!link.ok) return link.faults[0] ?? { code: 'damaged', found: 0 };
  const address = page.replace(/#.*$/, '') + link.value;
  return { address, code: qrPath(address) };
}

/** Opens the link room over a desk; `addChart` puts a chart on the shelf and returns its id. */
export function createLinkRoom(desk: DeskOfRoom, addChart: (text: string) => Promise<string>): LinkRoom {
  const store = createStore<LinkState>(() => ({ visit: { kind: 'none' } }));
  return {
    store,
    make: (note, page) => {
      const { text, settings } = desk.desk.getState();
      const travelling = Object.fromEntries(LINK_SETTINGS.map((name) => [name, settings[name]]));
      const link = makeLink({ text, note: note.trim(), settings: travelling });
      return madeLink(link, page);
    },
    look: (hash) => {
      if (!hash.startsWith(LINK_MARK)) return;
      const read = readLink(hash);
      const [fault = { code: 'damaged', found: 0 } as const] = read.ok ? [] : read.faults;
      store.setState({ visit: read.ok ? { kind: 'offer', offer: offerOf(read.value) } : { kind: 'fault', fault } });
    },
    leave: () => store.setState({ visit: { kind: 'none' } }),
    take: () => {
      const { visit } = store.getState();
      if (visit.kind !== 'offer') return;
      const { lesson, settings } = visit.offer;
      store.setState({ visit: { kind: 'none' } });
      void addChart(withNote(lesson)).then((id) => {
        desk.keep(`settings/${id}`, () => encode('settings', settings));
        desk.run({ kind: 'open', chartId: id });
      });
    },
  };
}

function offerOf(lesson: Lesson): Offer {
  const reading = readChart(lesson.text);
  const base = reading.ok ? settingsForChart(reading.value, DEFAULT_SETTINGS) : DEFAULT_SETTINGS;
  const settings = settingsFrom({ ...base, ...lesson.settings }, base);
  return {
    lesson,
    title: titleOf(lesson.text),
    bars: reading.ok ? barsOf(reading.value) : null,
    faults: reading.ok ? 0 : reading.faults.length,
    key: reading.ok ? (keysOf(reading.value)[settings.transpose] ?? null) : null,
    settings,
  };
}

const barsOf = (chart: Chart): number => unfold(chart).bars.length;

/** The chart with the teacher's words as comments at its top, where they go along with every copy of it. */
function withNote({ text, note }: Lesson): string {
  const lines = note.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
  return lines.map((line) => `${LINK_WORDS.noteLine(line.trim())}\n`).join('') + text;
}
