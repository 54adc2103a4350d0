import { createMemo } from 'solid-js';
import { ToldPlot } from '../parts/ToldPlot.tsx';
import { useSheet } from '../state/sheet.ts';
import { deratingPlot, mismatchPlot, outputPlot } from './amplifierPlots.ts';

/** The final over the amplitude of its output and over the mismatch of its load. */
export function AmplifierPlots() {
  const sheet = useSheet();
  const curves = () => sheet.results.curves()?.amplifier;
  const output = createMemo(() => {
    const found = curves()?.output;
    return found?.ok ? outputPlot(found.value) : undefined;
  });
  const mismatch = createMemo(() => {
    const found = curves()?.mismatch;
    const solution = sheet.results.solution();
    return found?.ok && solution ? mismatchPlot(found.value, solution) : undefined;
  });
  return (
    <>
      <ToldPlot
        told={output()}
        title="Power against output amplitude"
        cursorLabel="Amplitude to read the powers at"
      />
      <ToldPlot told={mismatch()} title="Heat against mismatch" cursorLabel="SWR to read the heat at" />
    </>
  );
}

/** The derating line of one device with the working point of each service. */
export function DeratingPlot() {
  const sheet = useSheet();
  const derating = createMemo(() => {
    const found = sheet.results.curves()?.amplifier.derating;
    return found?.ok ? deratingPlot(found.value) : undefined;
  });
  return (
    <ToldPlot
      told={derating()}
      title="Derating of one device"
      cursorLabel="Case temperature to read the allowed heat at"
    />
  );
}
