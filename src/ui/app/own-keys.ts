/** True where keys are typed text. */
export function isTextField(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !['button', 'checkbox', 'radio', 'range', 'submit'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}

/** True where Space and Enter have a meaning of their own. */
export function hasOwnSpace(target: EventTarget | null): boolean {
  return (
    target instanceof Element && target.closest('button, summary, input, a, [role="gridcell"], [role="radio"], [role="slider"]') !== null
  );
}
