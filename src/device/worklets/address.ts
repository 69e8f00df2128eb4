import clapWorklet from './clap-worklet?worker&url';

/** Address of the clap detector's file, of our own origin. */
export const CLAP_WORKLET = clapWorklet;
