import type { Device, Level } from '../../vocabulary';

/** How the piano plays a section, by its role, when the player has not fixed the level. A band builds by register and by layers. */
export interface RoleRow {
  readonly role: 'intro' | 'verse' | 'coro' | 'mambo' | 'piano solo' | 'percussion solo' | 'break' | 'coda';
  /** Level the first time the section is heard, and how high it may rise as it comes back. */
  readonly level: Level;
  readonly highest: Level;
  /** Devices from the given visit on (0 = from the first). */
  readonly devices: readonly { readonly device: Device; readonly fromVisit: number }[];
  /** Velocity steps louder or softer than usual; `perVisit` is added each time it comes back, four times at most. */
  readonly loudness: number;
  readonly perVisit: number;
}

/** All rows are common practice, no source, except that choruses get the fuller band (Conte, Guide to Latin Percussion; Wikipedia, “Salsa (musical structure)”). */
const ROLES: readonly RoleRow[] = [
  { role: 'intro', level: 2, highest: 2, devices: [], loudness: 0, perVisit: 0 },
  { role: 'verse', level: 2, highest: 2, devices: [], loudness: -10, perVisit: 0 },
  { role: 'coro', level: 3, highest: 4, devices: [], loudness: 0, perVisit: 3 },
  { role: 'mambo', level: 4, highest: 6, devices: [{ device: 'octave-up', fromVisit: 2 }], loudness: 6, perVisit: 3 },
  { role: 'piano solo', level: 2, highest: 2, devices: [], loudness: 0, perVisit: 0 },
  { role: 'percussion solo', level: 2, highest: 2, devices: [], loudness: 0, perVisit: 0 },
  { role: 'break', level: 2, highest: 2, devices: [], loudness: 4, perVisit: 0 },
  { role: 'coda', level: 2, highest: 2, devices: [], loudness: 4, perVisit: 0 },
];

/** What a section without a role gets. */
const PLAIN: Omit<RoleRow, 'role'> = { level: 2, highest: 2, devices: [], loudness: 0, perVisit: 0 };

/** The piano's level, devices and loudness for a role, `visit` times after it was first heard. */
export function pianoFor(
  role: RoleRow['role'] | null,
  visit: number,
): { readonly level: Level; readonly devices: readonly Device[]; readonly loudness: number } {
  const row = ROLES.find((candidate) => candidate.role === role) ?? PLAIN;
  const level = Math.min(row.highest, row.level + visit) as Level;
  return {
    level,
    devices: row.devices.filter(({ fromVisit }) => visit >= fromVisit).map(({ device }) => device),
    loudness: row.loudness + row.perVisit * Math.min(visit, 4),
  };
}
