import { createMemo, For, Show } from 'solid-js';
import { services } from '../../../shared/solution.ts';
import { CycleDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { ServicePicker } from '../parts/ServicePicker.tsx';
import { More, Station } from '../parts/Station.tsx';
import { ToldPlot } from '../parts/ToldPlot.tsx';
import { useSheet } from '../state/sheet.ts';
import { dutyPlot, type Told, warmUpPlot } from './plots.ts';

const plan = [
  'service.transmitShare',
  'service.cycle',
  'service.speechKind',
  'service.averageToPeak',
  'service.keyDownMode',
  'service.modulationDepth',
  'service.keyingSpeed',
];

const more = ['service.speechActivity', 'service.keyingWeight', 'service.keyingText'];

export function ServiceStation(props: { number: number }) {
  const sheet = useSheet();
  const duty = createMemo<Told | undefined>(() => {
    const solution = sheet.results.solution();
    const curves = sheet.results.curves();
    const design = sheet.results.solved();
    return solution && curves && design
      ? dutyPlot(design, solution, curves.sweeps, sheet.results.band())
      : undefined;
  });
  const warmUp = createMemo<Told | undefined>(() => {
    const solution = sheet.results.solution();
    const curves = sheet.results.curves();
    return solution && curves ? warmUpPlot(solution, curves.warmUps, sheet.service()) : undefined;
  });
  return (
    <Station
      id="service"
      number={props.number}
      title="Service and duty"
      given={
        <>
          <Fields paths={plan} />
          <More label="Pauses in speech, keying weight and text" paths={more}>
            <Fields paths={more} />
          </More>
        </>
      }
      sketch={
        <>
          <ServicePicker legend="Cycle in" />
          <CycleDrawing />
        </>
      }
      found={
        <>
          <FoundList
            station="service"
            main={[]}
            byService={['safeDuty', 'holdTime', 'deviceHeatCycle', 'junctionPeak']}
          />
          <Governing />
        </>
      }
      wide={
        <>
          <ToldPlot
            told={duty()}
            title="Junction temperature against duty"
            cursorLabel="Duty to read the temperatures at"
          />
          <ToldPlot
            told={warmUp()}
            title={`Warming up in ${sheet.nameOf(sheet.service())}`}
            cursorLabel="Time to read the temperatures at"
          />
          <Definitions />
        </>
      }
    />
  );
}

/** What each curve of the duty plot stands for, and what the duty is. */
function Definitions() {
  const sheet = useSheet();
  const solution = () => sheet.results.solution();
  return (
    <Show when={solution()}>
      {(found) => (
        <div class="definitions">
          <p>{found().dutyWords}</p>
          <dl class="governing">
            <For each={services}>
              {(service) => (
                <>
                  <dt class={`service-${service}`}>{found().words[service].name}</dt>
                  <dd>{found().words[service].definition}</dd>
                </>
              )}
            </For>
          </dl>
        </div>
      )}
    </Show>
  );
}

/** What ends the safe duty, in words; or why a service has no figures. */
function Governing() {
  const sheet = useSheet();
  return (
    <dl class="governing">
      <For each={services}>
        {(service) => {
          const sentence = () => {
            const result = sheet.results.solution()?.services[service];
            return result === undefined
              ? ''
              : result.ok
                ? result.value.governing.sentence
                : result.reason.sentence;
          };
          return (
            <Show when={sentence()}>
              <dt class={`service-${service}`}>{sheet.nameOf(service)}</dt>
              <dd>{sentence()}</dd>
            </Show>
          );
        }}
      </For>
    </dl>
  );
}
