/** The printed boxes of a page as boxes to tick. */

/**
 * Puts a box to tick in the place of each printed one.
 * @param root - where they stand
 * @param words - what is said before a step's title: "Done: "
 */
export function addBoxes(root: ParentNode, words: string): void {
  for (const box of root.querySelectorAll<HTMLElement>('[data-step] > .box:not(input)')) {
    const row = box.parentElement!;
    const tick = document.createElement('input');
    tick.type = 'checkbox';
    tick.className = 'box';
    tick.dataset.step = row.dataset.step!;
    if (row.dataset.machine) tick.dataset.machine = row.dataset.machine;
    tick.defaultChecked = box.classList.contains('is-done');
    tick.ariaLabel = `${words}${row.dataset.name ?? row.querySelector('.title')?.firstChild?.textContent?.trim() ?? ''}`;
    box.replaceWith(tick);
  }
}
