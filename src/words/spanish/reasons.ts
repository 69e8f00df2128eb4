/** Why the device refused, in Spanish, by what `src/device/refusal.ts` and the state say in English. */
const RAZONES: Readonly<Record<string, string>> = {
  'the storage of this device is full': 'el almacenamiento de este dispositivo está lleno',
  'a newer version of this page has written here': 'una versión más nueva de esta página escribió aquí',
  'everything was deleted in another tab': 'todo se borró en otra pestaña',
  'the device has not answered yet': 'el dispositivo todavía no responde',
};

/** A reason of ours in Spanish; a browser's own stays as the browser said it. */
export const razon = (reason: string): string => RAZONES[reason] ?? reason;
