import type { ClaveKind, Direction, Side } from '../vocabulary';
import { oneOf, seeded } from './seeded';

/*
 * Which side? By ear: something sounds from the start of a bar, and the player says which side that bar is. What was missed comes back
 * sooner; the same side never comes four times running. Seeded, so that a teacher can set the same questions.
 *
 *   let drill = startWhichSide({ seed: 7, sounds: ['clave', 'montuno'], kinds: ['son'] });
 *   drill.question            // sound this: what plays, which clave, which bar it starts in
 *   drill = answer(drill, 3); // → drill.last says whether it was right, drill.question is the next
 */

/** What sounds in a question, from the plainest to the most disguised. */
export const SIDE_SOUNDS = ['clave', 'montuno with clave', 'montuno', 'percussion', 'band without clave'] as const;
export type SideSound = (typeof SIDE_SOUNDS)[number];

/** One question. */
export interface SideQuestion {
  readonly sound: SideSound;
  readonly kind: ClaveKind;
  readonly direction: Direction;
  /** Side of the bar in which it starts: the answer. */
  readonly starts: Side;
  /** Bars that sound before the answer is shown. */
  readonly bars: 2 | 4;
}

/** The drill as it stands. */
export interface WhichSide {
  readonly question: SideQuestion;
  readonly last: { readonly question: SideQuestion; readonly answered: Side; readonly right: boolean } | null;
  readonly asked: number;
  readonly right: number;
  /** Right answers and questions of each sound. */
  readonly bySound: Readonly<Partial<Record<SideSound, { readonly asked: number; readonly right: number }>>>;
  readonly seed: number;
  readonly sounds: readonly SideSound[];
  readonly kinds: readonly ClaveKind[];
  /** Sides of the last questions, newest last. */
  readonly sides: readonly Side[];
}

/** The first question. Throws when there is nothing to choose from. */
export function startWhichSide({ seed, sounds, kinds }: Pick<WhichSide, 'seed' | 'sounds' | 'kinds'>): WhichSide {
  const blank = { last: null, asked: 0, right: 0, bySound: {}, seed, sounds, kinds, sides: [] };
  return withQuestion(blank);
}

/** The drill after an answer, with the next question. */
export function answer(drill: WhichSide, answered: Side): WhichSide {
  const { question, bySound } = drill;
  const right = answered === question.starts;
  const before = bySound[question.sound] ?? { asked: 0, right: 0 };
  return withQuestion({
    ...drill,
    last: { question, answered, right },
    asked: drill.asked + 1,
    right: drill.right + (right ? 1 : 0),
    bySound: { ...bySound, [question.sound]: { asked: before.asked + 1, right: before.right + (right ? 1 : 0) } },
  });
}

function withQuestion(drill: Omit<WhichSide, 'question'>): WhichSide {
  // Every question has numbers of its own, so that the same answers always lead to the same questions.
  const random = seeded(drill.seed * 7919 + drill.asked);
  const weighed = drill.sounds.flatMap((sound) => Array.from({ length: weightOf(drill, sound) }, () => sound));
  const sound = oneOf(weighed, random);
  const kind = oneOf(drill.kinds, random);
  const direction = oneOf<Direction>(['2-3', '3-2'], random);
  const running = drill.sides.slice(-3);
  const stuck = running.length === 3 && new Set(running).size === 1;
  const starts = stuck ? (running[0] === 2 ? 3 : 2) : oneOf<Side>([2, 3], random);
  const question: SideQuestion = { sound, kind, direction, starts, bars: drill.asked < 4 ? 4 : 2 };
  return { ...drill, question, sides: [...drill.sides, starts].slice(-3) };
}

/** Sounds that were missed come up to three times as often. */
function weightOf({ bySound }: Omit<WhichSide, 'question'>, sound: SideSound): number {
  const found = bySound[sound];
  return found === undefined ? 2 : 1 + Math.round(2 * (1 - found.right / found.asked));
}
