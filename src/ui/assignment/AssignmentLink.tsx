import { useState } from 'react';
import type { AssignmentRoom, Order } from '../../state/assignment/assignment-state';
import { MadeAddress } from '../link/MadeAddress';

/** The link of an assignment as it is ordered when this comes to the page; given the assignment's id as its key, it is never of another. */
export function AssignmentLink({ room, order }: { readonly room: AssignmentRoom; readonly order: Order }) {
  const [made] = useState(() => room.makeLink(order, window.location.href));
  return <MadeAddress made={made} />;
}
