import { createMemo, createSignal, For, Index, onCleanup, onMount, Show } from 'solid-js';
import type { PowerStep, Service } from '../../../shared/solution.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';

/** The station that answers for each step of the power path. */
const stationOf: Readonly<Record<PowerStep['key'], string>> = {
  source: 'source',
  wiring: 'source',
  converter: 'converter',
  amplifier: 'amplifier',
  network: 'amplifier',
  antenna: 'people',
};

type Basis = 'pep' | Service;
const bases: readonly Basis[] = ['pep', 'ssb', 'cw', 'keyDown'];

/** On a phone the path runs down. */
const phone = '(max-width: 760px)';
/** Between phone and desk the same stream is drawn shorter, so that its words keep their size. */
const belowDesk = '(max-width: 70rem)';

function createMatch(condition: string) {
  const query = globalThis.matchMedia?.(condition);
  const [matches, setMatches] = createSignal(query?.matches ?? false);
  onMount(() => {
    const follow = () => setMatches(query?.matches ?? false);
    query?.addEventListener?.('change', follow);
    onCleanup(() => query?.removeEventListener?.('change', follow));
  });
  return matches;
}

/** From source to antenna as one stream whose width is watts; heat falls away below. It is the map of the sheet. */
export function PowerPath() {
  const sheet = useSheet();
  const [basis, setBasis] = createSignal<Basis>('pep');
  const narrow = createMatch(phone);
  const middling = createMatch(belowDesk);
  const steps = createMemo(() => {
    const all = sheet.results.solution()?.powerPath[basis()] ?? [];
    const straight = sheet.store.view.converter.kind === 'none';
    return all.filter((step) => !(straight && step.key === 'converter'));
  });
  return (
    <nav class="power-path" aria-label="Power path: the stations of the sheet">
      <div class="power-path-head">
        <h2 class="band-title">Power path</h2>
        <fieldset class="picker">
          <legend>Watts</legend>
          <For each={bases}>
            {(each) => (
              <label>
                <input
                  type="radio"
                  name="power-basis"
                  checked={basis() === each}
                  onChange={() => setBasis(each)}
                />
                <span>{each === 'pep' ? 'at PEP' : sheet.nameOf(each)}</span>
              </label>
            )}
          </For>
        </fieldset>
        <p class="power-path-sum">{sumOf(steps())}</p>
      </div>
      <Show
        when={steps().length > 0}
        fallback={
          <Show when={sheet.results.solution()}>
            <p class="no-drawing">No power path: see the reasons above.</p>
          </Show>
        }
      >
        <Show
          when={narrow()}
          fallback={<Stream steps={steps()} width={middling() ? middleWidth : streamWidth} />}
        >
          <Falling steps={steps()} />
        </Show>
      </Show>
    </nav>
  );
}

const watts = (power: number) => writeQuantity(power, 'power');
/** Heat smaller than this share of the stream is not drawn as a branch, only named. */
const thinnest = 0.004;
/** What is less than this share of the stream is lost in the rounding of the sum. */
const told = 0.0005;

interface Branch {
  readonly label: string;
  readonly power: number;
  readonly kind: 'heat' | 'other';
}

interface Stage {
  readonly step: PowerStep;
  readonly branches: readonly Branch[];
  /** What flows on to the next step. */
  readonly onward: number;
}

/** Each step with what leaves it: its heat, and what other boards take before the next step. */
function stagesOf(steps: readonly PowerStep[]): readonly Stage[] {
  return steps.map((step, index) => {
    const next = steps[index + 1];
    const onward = next ? next.powerIn - next.added : step.powerOut;
    const tapped = step.powerOut - onward;
    const branches: Branch[] = [];
    if (step.heat > 0) branches.push({ label: 'heat', power: step.heat, kind: 'heat' });
    if (next && tapped > thinnest * step.powerIn)
      branches.push({ label: 'boards', power: tapped, kind: 'other' });
    return { step, branches, onward };
  });
}

const streamWidth = 1200;
const middleWidth = 820;
const streamHeight = 210;
/** The last step has nothing after it: it needs the width of its name alone. */
const lastWidth = 132;

/** The power path as one stream from left to right. */
export function Stream(props: { steps: readonly PowerStep[]; width?: number }) {
  const width = () => props.width ?? streamWidth;
  const stages = createMemo(() => stagesOf(props.steps));
  const largest = () => Math.max(...props.steps.map((step) => Math.max(step.powerIn, step.powerOut)), 1e-9);
  const wide = (power: number) => (power / largest()) * 64;
  const pitch = () => (width() - lastWidth) / Math.max(props.steps.length - 1, 1);
  const top = 56;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing of links is no fieldset
    <svg class="stream" viewBox={`0 0 ${width()} ${streamHeight}`} role="group" aria-label="Power path">
      <Index each={stages()}>
        {(stage, index) => {
          const x = () => index * pitch();
          const isLast = () => index === stages().length - 1;
          const reach = () => (isLast() ? lastWidth : pitch());
          return (
            <g>
              <a href={`#${stationOf[stage().step.key]}`} class="stream-link">
                <rect class="stream-hit" x={x()} y="0" width={reach()} height={streamHeight} />
                {/* Words first and with spaces between: together they are the name of the link. */}
                <text class="stream-name" x={x() + 8} y="20">
                  {`${stage().step.label} `}
                </text>
                <text class="stream-watts" x={x() + 8} y="42">
                  {`${watts(stage().step.powerIn)} `}
                </text>
                <rect
                  class="stream-body"
                  x={x()}
                  y={top}
                  width={isLast() ? 60 : pitch()}
                  height={Math.max(wide(stage().onward), 1)}
                />
                <Show when={isLast()}>
                  <path
                    class="stream-body"
                    d={`M${x() + 59.5} ${top - 8}l28 ${8 + wide(stage().onward) / 2}l-28 ${8 + wide(stage().onward) / 2}z`}
                  />
                </Show>
                <Branches stage={stage()} x={x()} top={top} wide={wide} />
                <path
                  class="stream-tick"
                  d={`M${x() + 0.75} ${top - 10}V${top + Math.max(wide(stage().step.powerIn), 1) + 4}`}
                />
              </a>
            </g>
          );
        }}
      </Index>
    </svg>
  );
}

/**
 * How much of what the source gives arrives, and where the rest goes. What the other boards take and the drive adds is
 * told where it shows in three digits, so that a reader's own sum closes.
 */
export function sumOf(steps: readonly PowerStep[]): string {
  const given = steps[0]?.powerIn ?? 0;
  const arriving = steps.at(-1)?.powerIn ?? 0;
  if (!(given > 0)) return '';
  const stages = stagesOf(steps);
  const heat = steps.reduce((sum, step) => sum + step.heat, 0);
  const boards = stages.reduce((sum, { step, onward }) => sum + step.powerOut - onward, 0);
  const drive = steps.reduce((sum, step) => sum + step.added, 0);
  const tells = (power: number) => power > told * given;
  const share = writeQuantity(arriving / given, 'share', '%', 2);
  return [
    `${watts(arriving)} of ${watts(given)} reach the antenna, ${share}; ${watts(heat)} become heat`,
    tells(boards) ? `, ${watts(boards)} feed other boards` : '',
    tells(drive) ? `, ${watts(drive)} of drive counted in` : '',
    '.',
  ].join('');
}

/** What leaves a step, bending down out of the stream: the width again in watts. */
function Branches(props: { stage: Stage; x: number; top: number; wide: (power: number) => number }) {
  const offset = (index: number) =>
    props.stage.branches.slice(0, index).reduce((sum, branch) => sum + props.wide(branch.power), 0);
  return (
    <Index each={props.stage.branches}>
      {(branch, index) => {
        const y = () => props.top + props.wide(props.stage.onward) + offset(index);
        const w = () => props.wide(branch().power);
        const bend = 18;
        const down = () => 168 - y();
        const x = () => props.x + index * 76;
        const reach = () => 10 + w();
        return (
          <g class={branch().kind === 'heat' ? 'branch-heat' : 'branch-other'}>
            <path
              d={`M${props.x} ${y()}H${x() + reach()}q${bend} 0 ${bend} ${bend}V${y() + down()}h${-w()}V${y() + w() + bend}q0 ${-bend} ${-bend} ${-bend}H${props.x}z`}
            />
            <text x={x() + 28} y="188">
              {`${watts(branch().power)} `}
            </text>
            <text class="caption" x={x() + 28} y="205">
              {`${branch().label} `}
            </text>
          </g>
        );
      }}
    </Index>
  );
}

function boardsOf({ branches }: Stage): number {
  return branches.reduce((sum, branch) => sum + (branch.kind === 'other' ? branch.power : 0), 0);
}

/** The same on a phone: a list that runs down, bars to one scale. */
function Falling(props: { steps: readonly PowerStep[] }) {
  const stages = createMemo(() => stagesOf(props.steps));
  const largest = () => Math.max(...props.steps.map((step) => Math.max(step.powerIn, step.powerOut)), 1e-9);
  const bar = (power: number) => `${((power / largest()) * 100).toFixed(2)}%`;
  return (
    <ol class="falling">
      <Index each={stages()}>
        {(stage) => (
          <li>
            <a href={`#${stationOf[stage().step.key]}`}>{stage().step.label}</a>
            <span class="falling-watts">{watts(stage().step.powerIn)}</span>
            <svg class="falling-bar" aria-hidden="true">
              <rect class="stream-body" width={bar(stage().onward)} height="100%" />
              <rect
                class="branch-heat"
                x={bar(stage().onward)}
                width={bar(Math.max(stage().step.heat, 0))}
                height="100%"
              />
              <rect
                class="branch-boards"
                x={bar(stage().onward + Math.max(stage().step.heat, 0))}
                width={bar(boardsOf(stage()))}
                height="100%"
              />
            </svg>
            <span class="falling-loss">
              <Index each={stage().branches}>
                {(branch) => (
                  <span class={branch().kind === 'heat' ? 'heat-text' : ''}>
                    {watts(branch().power)} {branch().label}
                  </span>
                )}
              </Index>
            </span>
          </li>
        )}
      </Index>
    </ol>
  );
}
