import { useDeskSoon } from './desk-context';
import { NoMusic } from './NoMusic';
import { PractiseStand } from './PractiseStand';

/** The Practise place, or what stands there while no chart could be read. */
export function PractisePlace() {
  const music = useDeskSoon((state) => state.music);
  const loop = useDeskSoon((state) => state.settings.loop);
  const edits = useDeskSoon((state) => state.settings.edits);
  return music ? <PractiseStand music={music} loop={loop} edits={edits} /> : <NoMusic />;
}
