import { PRACTICE } from './practice-limits';

/*
 * A practice plan with rests: blocks of playing and rest if wished, a break after three blocks, and no two near-twin levels of a cell
 * that is new today. Prompts wait for the end of a loop. Everything can be passed over; nothing counts minutes as a goal.
 *
 *   const plan = planSession(items, { rests: true });
 *   let run = startPlan(plan, nowSeconds);
 *   run = atClock(run, nowSeconds, insideLoop);   // run.prompt is what to say now, or null
 *   run = goOn(run, nowSeconds);                  // accepted or passed over: the next part begins
 */

/** Something to practise. `family` is what near-twins share: the cell or the chart; `level` how far they are apart. */
export interface PlanItem {
  readonly id: string;
  readonly family: string;
  readonly level: number;
  /** True on the first day with it. */
  readonly isNew: boolean;
}

/** One part of a session. */
export type PlanPart =
  | { readonly kind: 'play'; readonly item: string; readonly seconds: number }
  | { readonly kind: 'rest' | 'break'; readonly seconds: number };

/** A session, and what was put off to another day. */
export interface PracticePlan {
  readonly parts: readonly PlanPart[];
  /** Near-twins of what is new today that nothing else could be put between. */
  readonly tomorrow: readonly string[];
}

/** How a session is laid out. Without rests a block is followed by the next; the break after three blocks is always offered. */
export interface PlanChoices {
  readonly rests: boolean;
  /** Times that each block of playing goes on and off; 6 when missing: six minutes with rests. */
  readonly roundsPerBlock?: number;
}

/** A session of one block for each item, in an order that keeps near-twins apart. */
export function planSession(items: readonly PlanItem[], { rests, roundsPerBlock = 6 }: PlanChoices): PracticePlan {
  const { order, tomorrow } = apart(items);
  const parts: PlanPart[] = [];
  order.forEach((item, block) => {
    if (block > 0 && block % PRACTICE.blocksToBreak.value === 0) parts.push({ kind: 'break', seconds: PRACTICE.breakSeconds.value });
    const on: PlanPart = { kind: 'play', item: item.id, seconds: PRACTICE.onSeconds.value };
    if (!rests) parts.push({ ...on, seconds: on.seconds * roundsPerBlock });
    else
      for (let round = 0; round < roundsPerBlock; round += 1) {
        parts.push(on);
        if (round < roundsPerBlock - 1) parts.push({ kind: 'rest', seconds: PRACTICE.offSeconds.value });
      }
  });
  return { parts, tomorrow: tomorrow.map(({ id }) => id) };
}

/** Whether two items are levels of one new cell that would blur each other on the first day. */
export const areNearTwins = (a: PlanItem, b: PlanItem): boolean =>
  a.family === b.family && a.level !== b.level && Math.abs(a.level - b.level) <= 1 && (a.isNew || b.isNew);

/** The items in their order, but for near-twins, which are moved behind something else; those left over are for tomorrow. */
function apart(items: readonly PlanItem[]): { order: PlanItem[]; tomorrow: PlanItem[] } {
  const order: PlanItem[] = [];
  const waiting = [...items];
  while (waiting.length > 0) {
    const last = order.at(-1);
    const index = waiting.findIndex((item) => !last || !areNearTwins(last, item));
    if (index === -1) break;
    order.push(...waiting.splice(index, 1));
  }
  return { order, tomorrow: waiting };
}

/** A session as it runs. */
export interface PlanRun {
  readonly plan: PracticePlan;
  /** Index of the part that is on; the number of parts when the session is over. */
  readonly part: number;
  readonly since: number;
  /** What is due to be said: the kind of the part that follows, or `over`. Null in the middle of a part and of a loop. */
  readonly prompt: PlanPart['kind'] | 'over' | null;
}

/** A session at its beginning; moments in seconds of any steady clock. */
export const startPlan = (plan: PracticePlan, now: number): PlanRun => ({
  plan,
  part: 0,
  since: now,
  prompt: plan.parts.length === 0 ? 'over' : null,
});

/** The session at a moment. The time of a part may be over in the middle of a loop: then it is said at the loop's end. */
export function atClock(run: PlanRun, now: number, insideLoop: boolean): PlanRun {
  const part = run.plan.parts[run.part];
  if (!part || run.prompt !== null || insideLoop || now - run.since < part.seconds) return run;
  return { ...run, prompt: run.plan.parts[run.part + 1]?.kind ?? 'over' };
}

/** The next part begins now, whether the prompt was followed or passed over. A rest may also be left early. */
export function goOn(run: PlanRun, now: number): PlanRun {
  const part = Math.min(run.part + 1, run.plan.parts.length);
  return { ...run, part, since: now, prompt: part === run.plan.parts.length ? 'over' : null };
}
