/** What a teacher hands to a student in a link. */
export interface Lesson {
  /** Chart text. */
  readonly text: string;
  /** Words of the teacher; empty for none. */
  readonly note: string;
  /** How it is to be practised: level, tempo, goal, direction and key, as settings are saved; each is checked when it is taken over. */
  readonly settings: Readonly<Record<string, string | number>>;
}

/** The settings that travel in a link. */
export const LINK_SETTINGS = ['level', 'tempo', 'goalTempo', 'direction', 'kind', 'transpose', 'hands'] as const;
/** What a link's part of the address begins with; places begin with `#/`. */
export const LINK_MARK = '#l=';
/** … and that of an assignment. */
export const ASSIGNMENT_MARK = '#t=';
/** Version of every link made now. */
export const LINK_VERSION = 1;
/** The longest part of an address that is made or read, in characters. */
export const LONGEST_LINK = 8192;
/** The most bytes that a link may hold once it is unpacked. */
export const MOST_UNPACKED = 65_536;
/** The longest note, in characters. */
export const LONGEST_NOTE = 2000;

/** Why a link cannot be made or opened. */
export interface LinkFault {
  readonly code: 'no link' | 'too long' | 'newer version' | 'damaged' | 'too much inside' | 'no lesson';
  /** What was found where a number says it: characters, bytes or a version. */
  readonly found: number;
}
