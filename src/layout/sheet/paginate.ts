import type { SheetBlock } from './sheet-blocks';

/**
 * Blocks on pages, in order, none cut: a block that does not fit begins a new page, together with the blocks that must stay with
 * it, and so does one that asks for a page of its own. A block taller than a page gets a page to itself.
 */
export function paginate(blocks: readonly SheetBlock[], roomMm: number): SheetBlock[][] {
  const pages: SheetBlock[][] = [];
  let page: SheetBlock[] = [];
  let used = 0;
  for (const group of keptTogether(blocks)) {
    const height = group.reduce((sum, block) => sum + block.heightMm, 0);
    if (page.length > 0 && (used + height > roomMm || group[0]?.newPage)) {
      pages.push(page);
      page = [];
      used = 0;
    }
    page.push(...group);
    used += height;
  }
  if (page.length > 0) pages.push(page);
  return pages;
}

function keptTogether(blocks: readonly SheetBlock[]): SheetBlock[][] {
  const groups: SheetBlock[][] = [];
  let open = false;
  for (const block of blocks) {
    const last = groups.at(-1);
    if (open && last) last.push(block);
    else groups.push([block]);
    open = block.keepWithNext;
  }
  return groups;
}
