/** How a width of screen is used: staff units across it, and bars in a system. */
export interface StaffSize {
  readonly units: number;
  readonly perSystem: 1 | 2 | 4;
}

/** Staff units that one, two or four bars need to be read easily, clef and signatures included. */
const ROOM_FOR_TWO = 560;
const ROOM_FOR_FOUR = 1000;

/** Units that a bar of sixteen sixteenths needs at least. */
const ROOM_FOR_CYCLE = 480;

/** The size of notes for a width in CSS pixels: a little smaller than life on phones, growing on wide screens. One clave cycle is never broken unless one bar fills the line. */
export function staffSize(width: number, joined = false): StaffSize {
  const scale = Math.min(1.3, Math.max(0.85, width / 1050));
  const units = Math.max(joined ? ROOM_FOR_CYCLE : 280, Math.round(width / scale));
  if (joined) return { units, perSystem: units >= ROOM_FOR_FOUR ? 2 : 1 };
  return { units, perSystem: units >= ROOM_FOR_FOUR ? 4 : units >= ROOM_FOR_TWO ? 2 : 1 };
}
