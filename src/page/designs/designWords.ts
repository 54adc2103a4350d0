import type { Design } from '../../../shared/design/schema.ts';
import { writeEcho } from '../../engine/quantity/write.ts';

/** What a design is, in a line: "60 W, class AB, on 36 V". */
export function designWords(design: Design): string {
  const { amplifier, converter, source } = design;
  const rail = converter.kind === 'none' ? source.openVoltage : converter.outputVoltage;
  return `${writeEcho(amplifier.pep, 'power', 'W')}, class ${amplifier.class}, on ${writeEcho(rail, 'voltage', 'V')}`;
}
