import { PARTS } from '../../performance/performance';
import type { SideQuestion, SideSound } from '../../practice/which-side';
import type { Balance, Settings } from '../settings';

const HEARD: Readonly<Record<SideSound, readonly (typeof PARTS)[number][]>> = {
  clave: ['clave'],
  'montuno with clave': ['piano right', 'piano left', 'clave'],
  montuno: ['piano right', 'piano left', 'bass'],
  percussion: ['percussion'],
  'band without clave': ['piano right', 'piano left', 'bass', 'percussion'],
};

/** The settings under which a question sounds; `balance` gives the levels. No count-in: it would tell the side. */
export const settingsOfQuestion = ({ sound, kind, direction }: SideQuestion, balance: Balance): Partial<Settings> => ({
  kind: kind === 'rumba' ? 'rumba' : 'son',
  direction,
  countInBars: 0,
  loop: null,
  balance: Object.fromEntries(PARTS.map((part) => [part, { ...balance[part], muted: !HEARD[sound].includes(part) }])) as unknown as Balance,
});

/** Bar (from 0) at which a question begins to sound: the first of its side after the start of the form. */
export const firstBarOf = ({ direction, starts }: SideQuestion): 0 | 1 => (direction.startsWith(String(starts)) ? 0 : 1);
