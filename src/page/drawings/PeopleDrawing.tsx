import { Show } from 'solid-js';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { arrowHead } from './Dimension.tsx';

/** How far people stay from the antenna, and how hot a hand finds the sink. */
export function PeopleDrawing() {
  const sheet = useSheet();
  const figures = createFigures();
  return (
    <>
      <Show
        when={figures.value('exposureDistance') !== undefined}
        fallback={
          <p class="no-drawing">
            No distance is given for this kind of antenna: measure the field or have it computed for the
            antenna as it hangs.
          </p>
        }
      >
        <svg
          class="drawing"
          viewBox="0 0 400 168"
          role="img"
          aria-label={`People stay at least ${figures.text('exposureDistance')} from every part of the antenna on ${sheet.store.view.antenna.band}.`}
        >
          <path class="thin" d="M10 150H390" />
          <path class="outline" d="M30 150V34M196 150V34M30 40Q113 54 196 40" />
          <path
            class="outline"
            d="M330 84a9 9 0 1 0 .1 0zM330 102v28M330 130l-9 20M330 130l9 20M314 112h32"
          />
          <path class="thin" d="M196 44V26M330 82V26" />
          <path class="thin" d="M196 30H330" />
          <path class="arrow" d={`${arrowHead(196, 30, 'left')}${arrowHead(330, 30, 'right')}`} />
          <text class="figure" x="263" y="22" text-anchor="middle">
            {figures.text('exposureDistance')}
          </text>
          <text class="caption" x="263" y="46" text-anchor="middle">
            at least
          </text>
          <text class="caption" x="113" y="70" text-anchor="middle">
            {sheet.store.view.antenna.band}, {figures.text('exposurePower')} mean
          </text>
        </svg>
      </Show>
      <p class="sketch-note">
        Not to scale. From the nearest part of the antenna to the nearest part of a person.
      </p>
    </>
  );
}
