/** What is said above the transport: the line about hands and arms, sound that does not start. */
export const TRANSPORT_NOTICES = {
  caution: 'Montuno playing is heavy work. Stop when it hurts, shake out, rest; if it keeps hurting, see a teacher or a clinician.',
  cautionSeen: 'Understood',
  /** What the page says when sound cannot start. */
  blocked: (reason: string): string =>
    `The sound could not start: ${reason}. Touch the page or press a key to go on, or look whether this page may play sound.`,
} as const;
