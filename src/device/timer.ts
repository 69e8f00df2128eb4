/** The browser's timer: does something after a while, unless it is called off. */
export const timer = {
  after: (ms: number, action: () => void): (() => void) => {
    const waiting = setTimeout(action, ms);
    return () => clearTimeout(waiting);
  },
};
