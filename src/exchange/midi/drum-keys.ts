import { strokeVelocity } from '../../performance/percussion-touch';

/**
 * Keys of the General MIDI percussion map (GM System Level 1, RP-003, channel 10) for the strokes of each part.
 * The key numbers are published; which key stands for a stroke that the map does not name (a shell, a muffled tone) is common practice, no source.
 */
const KEYS: Readonly<Record<string, { readonly default: number; readonly [stroke: string]: number }>> = {
  clave: { default: 75 },
  cascara: { default: 37 },
  campana: { default: 56 },
  bell: { default: 56 },
  'bongo bell': { default: 56 },
  'mambo bell': { default: 56 },
  'cha-cha bell': { default: 56 },
  conga: { default: 62, accent: 63, open: 63, 'soft open': 63, low: 64, 'open low': 64 },
  bongo: { default: 60, low: 61 },
  timbales: { default: 66, rim: 65, rimshot: 65, roll: 65, accent: 65 },
  maracas: { default: 70 },
  guiro: { default: 73, long: 74, 'long scrape': 74 },
};

/** The key of the percussion map for a stroke of a part; a part the table does not know sounds as a low wood block (77). */
export function drumKey(part: string, stroke: string): number {
  const keys = KEYS[part] ?? { default: 77 };
  return keys[stroke] ?? keys.default;
}

/** Velocity of a stroke of that name, 1 to 127: the one that is heard. */
export const drumVelocity = (stroke: string): number => strokeVelocity(stroke);
