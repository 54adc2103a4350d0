import { onCleanup, onMount } from 'solid-js';
import type { Designs } from './designs.ts';
import { faultLines } from './faultLines.ts';
import type { Notices } from './notices.ts';

/** A design behind the # of the address: "d1." and so on. Places on the sheet have no dot in their names. */
const carriesDesign = /^#[dj]\d+\./;

/** Opens the design that the page's address carries, now and whenever a link is followed in this tab. */
export function openLinks(designs: Pick<Designs, 'bringIn'>, notices: Notices): void {
  onMount(() => {
    const follow = () => {
      const { hash } = location;
      if (carriesDesign.test(hash)) void openLink(hash, designs, notices);
    };
    follow();
    globalThis.addEventListener('hashchange', follow);
    onCleanup(() => globalThis.removeEventListener('hashchange', follow));
  });
}

/** Brings the design of a link in beside those that are kept, or says what is wrong with it. */
export async function openLink(
  hash: string,
  designs: Pick<Designs, 'bringIn'>,
  notices: Notices,
): Promise<void> {
  const { readLink } = await import('../../../shared/design/link.ts');
  const read = await readLink(hash);
  // Taken from the address, so that a reload does not open it once more.
  history.replaceState(history.state, '', location.pathname + location.search);
  if (read.ok) {
    notices.dismiss('link');
    designs.bringIn([read.design]);
    return;
  }
  notices.show({ key: 'link', title: 'The link was not opened.', lines: faultLines(read) });
}
