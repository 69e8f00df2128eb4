import type { Clave, Side } from '../vocabulary';

/** Names of instruments, as a part is headed; a part that is not here is headed by its own name. */
const PART_NAMES: Readonly<Record<string, string>> = {
  piano: 'Piano',
  bass: 'Bass',
  clave: 'Clave',
  cascara: 'Cáscara',
  'mambo bell': 'Mambo bell',
  'cha-cha bell': 'Cha-cha bell',
  'bongo bell': 'Bongó bell',
  bell: 'Bell',
  bongo: 'Bongó',
  conga: 'Congas',
  timbales: 'Timbales',
  maracas: 'Maracas',
  guiro: 'Güiro',
};

/** Words in a score that other programs open. */
export const SCORE_FILE_WORDS = {
  untitled: 'Montuno',
  part: (name: string): string => PART_NAMES[name] ?? name,
  side: (side: Side): string => `${side}-side`,
  /** At the head of the score and where the clave restarts. */
  clave: (clave: Clave): string => `${clave.direction} ${clave.kind} clave`,
  restart: (side: Side): string => `clave restarts on the ${side}-side`,
  onCue: 'until the cue',
  push: 'push',
} as const;
