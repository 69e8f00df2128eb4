import { type DeviceStorage, deskBench, turns } from './desk-fixture';

/** A page on a device; `open` lets `ms` of waiting pass and says whether it stands by then. */
export function latePage(device: DeviceStorage, ids = 'own') {
  const bench = deskBench({ device, ids });
  let stands = false;
  const pass = async (ms: number): Promise<void> => {
    await turns();
    bench.timer.pass(ms);
    await turns();
  };
  return {
    ...bench,
    pass,
    state: () => bench.desk.desk.getState(),
    open: async (ms: number): Promise<boolean> => {
      void bench.desk.restore().then(() => {
        stands = true;
      });
      await pass(ms);
      return stands;
    },
    stands: () => stands,
  };
}
