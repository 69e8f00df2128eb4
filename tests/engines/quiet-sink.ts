import { giveSoundDevice } from './find-engines';

// Playwright takes a set-up as a default export.
export default giveSoundDevice;
