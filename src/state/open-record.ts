import { type Patience, underChanges } from './patience';

/** What `openRecord` is given: what is read, what stands for it meanwhile, who shows it and who writes it. */
export interface LateRecord<Fields> {
  readonly saved: Promise<Fields>;
  readonly empty: Fields;
  readonly inTime: Patience['inTime'];
  readonly show: (fields: Fields) => void;
  readonly keep: (fields: Fields) => void;
}

/**
 * Shows a record when it comes, or `empty` until then when it is late. What is given to the returned function is kept; before the record
 * has come it is held back and then laid over it, so that nothing unseen is written over.
 */
export function openRecord<Fields extends object>({ saved, empty, inTime, show, keep }: LateRecord<Fields>): (fields: Fields) => void {
  let draft: Fields | null = null;
  let hasCome = false;
  const coming = saved.then((kept) => {
    hasCome = true;
    if (draft === null) return show(kept);
    const merged = underChanges(kept, empty, draft);
    show(merged);
    keep(merged);
  });
  void inTime(coming).then((known) => {
    if (!known && draft === null) show(empty);
  });
  return (fields) => {
    if (hasCome) keep(fields);
    else draft = fields;
  };
}
