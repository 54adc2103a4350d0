import { createMemo, Index, Show } from 'solid-js';
import { writeDistanceUp, writeNearest } from '../parts/distance.ts';
import { useSheet } from '../state/sheet.ts';
import { arrowHead } from './Dimension.tsx';
import { dimensionPlace, type ExposurePlan, exposurePlan, lengthFromAbove, plan } from './exposurePlan.ts';

/** The antenna from above and how far people stay from it, to scale, the chosen band among all others. */
export function PeopleDrawing() {
  const sheet = useSheet();
  const rows = createMemo(() => sheet.results.solution()?.exposure ?? []);
  const antenna = () => sheet.store.view.antenna;
  const found = createMemo((): ExposurePlan | undefined => {
    const chosen = rows().find((row) => row.chosen);
    if (!chosen || chosen.distance === null) return undefined;
    const length = lengthFromAbove(antenna().kind, chosen.frequency, antenna().loopRadius);
    return exposurePlan(rows(), length, antenna().nearestPerson);
  });
  return (
    <Show
      when={found()}
      fallback={
        <p class="no-drawing">
          No distance is given for this kind of antenna: no formula holds for it. Measure the field or have it
          computed for the antenna as it hangs, and keep people away and the power low until then.
        </p>
      }
    >
      {(drawn) => <Plan plan={drawn()} />}
    </Show>
  );
}

function Plan(props: { plan: ExposurePlan }) {
  const sheet = useSheet();
  const metres = (value: number) => writeDistanceUp(value, sheet.preferences.system());
  const said = () => {
    const chosen = props.plan.chosen;
    const rest = props.plan.contours.filter((contour) => !contour.chosen);
    const others = rest.map((contour) => `${contour.name} ${metres(contour.distance)}`).join('; ');
    return `The antenna from above, to scale. On ${chosen?.name ?? ''} people stay at least ${metres(chosen?.distance ?? 0)} away from every part of it. Other bands: ${others}.`;
  };
  return (
    <>
      <svg class="drawing" viewBox={`0 0 ${plan.width} ${plan.height}`} role="img" aria-label={said()}>
        <Index each={props.plan.contours}>
          {(contour) => (
            <>
              <path
                class="leader"
                d={`M${contour().from.join(' ')}L${plan.right + 6} ${contour().labelY - 4}`}
              />
              <path class={contour().chosen ? 'outline' : 'hidden-line'} d={contour().path} />
              <text
                class={contour().chosen ? 'plan-chosen' : 'caption'}
                x={plan.right + 9}
                y={contour().labelY}
              >
                {contour().name}: {metres(contour().distance)}
              </text>
            </>
          )}
        </Index>
        <Antenna plan={props.plan} />
        <Show when={props.plan.chosen}>
          {(chosen) => (
            <Reach
              x={dimensionPlace(props.plan)}
              radius={chosen().distance * props.plan.scale}
              text={metres(chosen().distance)}
            />
          )}
        </Show>
        <Person plan={props.plan} />
        <ScaleBar plan={props.plan} />
      </svg>
      <p class="sketch-note">
        From above, to scale<Show when={props.plan.broken}>, one end of the wire; the other is alike</Show>.
        From the nearest part of the antenna to the nearest part of a person.
      </p>
    </>
  );
}

function Antenna(props: { plan: ExposurePlan }) {
  const y = plan.middle;
  return (
    <>
      <path class="plan-wire" d={`M${props.plan.start} ${y}H${props.plan.end}`} />
      <Show when={props.plan.broken}>
        <path class="outline" d={`M${props.plan.start} ${y - 9}l4 6l-8 6l4 6`} />
      </Show>
      <Show when={props.plan.end - props.plan.start < 1}>
        <path class="outline" d={`M${props.plan.end - 5} ${y - 5}l10 10m0 -10l-10 10`} />
      </Show>
    </>
  );
}

/** From the antenna to the contour of the chosen band. */
function Reach(props: { x: number; radius: number; text: string }) {
  const top = () => plan.middle - props.radius;
  return (
    <Show when={props.radius > 14}>
      <path class="thin" d={`M${props.x} ${plan.middle}V${top()}`} />
      <path class="arrow" d={arrowHead(props.x, top(), 'up') + arrowHead(props.x, plan.middle, 'down')} />
      <text x={props.x + 7} y={plan.middle - props.radius / 2 + 4}>
        {props.text}
      </text>
    </Show>
  );
}

/** Someone at the nearest place that was entered. */
function Person(props: { plan: ExposurePlan }) {
  const sheet = useSheet();
  const nearest = () => sheet.store.view.antenna.nearestPerson;
  const x = () => props.plan.end - 6;
  return (
    <Show when={nearest() !== null}>
      <Show
        when={props.plan.person}
        fallback={
          <text class="caption" x={plan.left} y={plan.height - 4}>
            people at {writeNearest(nearest() ?? 0, sheet.preferences.system())}: beyond this drawing
          </text>
        }
      >
        {(down) => (
          <g transform={`translate(${x()} ${plan.middle + down()})`}>
            <path class="part" d="M-11 4a11 5 0 1 0 22 0a11 5 0 1 0 -22 0z" />
            <circle class="part" cx="0" cy="4" r="4.5" />
            <text x="-15" y="9" text-anchor="end">
              people
            </text>
          </g>
        )}
      </Show>
    </Show>
  );
}

function ScaleBar(props: { plan: ExposurePlan }) {
  const length = () => props.plan.bar * props.plan.scale;
  const y = plan.height - 8;
  return (
    <>
      <path class="outline" d={`M${plan.width - 8 - length()} ${y - 4}v4h${length()}v-4`} />
      <text class="caption" x={plan.width - 14 - length()} y={y} text-anchor="end">
        {Number(props.plan.bar.toPrecision(3))} m
      </text>
    </>
  );
}
