import type { Desk } from '../state/desk';
import { createLinkRoom, type LinkRoom } from '../state/link/link-room';

/** Joins the link room to the desk and its shelf. Fetched when a link is made or opened. */
export const openLink = (desk: Desk): LinkRoom => createLinkRoom(desk, async (text) => (await desk.rooms.library()).add(text));
