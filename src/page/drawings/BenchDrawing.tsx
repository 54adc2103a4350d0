import { useSheet } from '../state/sheet.ts';

const widest = 200;
const tallest = 150;
const left = 30;
const top = 30;
/** Foot of the resistor where no run says it, m. */
const usualFoot = { resistorWidth: 0.015, resistorLength: 0.02 };

/** The test on the bench: resistor on the plate, where the thermometers go, supply with its two meters. To scale. */
export function BenchDrawing() {
  const { store } = useSheet();
  const sink = () => store.view.sink;
  const foot = () => store.view.bench[0] ?? usualFoot;
  const scale = () => Math.min(widest / sink().width, tallest / sink().length);
  const width = () => sink().width * scale();
  const length = () => sink().length * scale();
  const x = () => left + width() / 2;
  const y = () => top + length() / 2;
  const footWidth = () => Math.min(foot().resistorWidth * scale(), width());
  const footLength = () => Math.min(foot().resistorLength * scale(), length());
  const beside = () => Math.min(x() + footWidth() / 2 + 0.004 * scale(), left + width());
  const corner = () => ({ x: left + 0.06 * width(), y: top + 0.94 * length() });
  const height = () => top + length() + 74;
  const meters = 304;

  return (
    <svg
      class="drawing"
      viewBox={`0 0 400 ${height().toFixed(0)}`}
      role="img"
      aria-label="Set-up of the bench test: a resistor bolted to the middle of the plate and fed by a DC supply with a volt meter and an ampere meter; one thermometer beside the resistor or near a corner of the plate, one in still air below the sink."
    >
      <rect class="outline" x={left} y={top} width={width()} height={length()} />
      <rect
        class="part"
        x={x() - footWidth() / 2}
        y={y() - footLength() / 2}
        width={footWidth()}
        height={footLength()}
      />
      <text class="caption" x={x()} y={y() - footLength() / 2 - 6} text-anchor="middle">
        resistor
      </text>
      <path
        class="outline"
        d={`M${x()} ${y() - footLength() / 4}H${meters}V${top + 6}M${x()} ${y() + footLength() / 4}H${meters + 40}V${top + 6}`}
      />
      <circle class="outline paper" cx={meters} cy={y() - 24} r="11" />
      <text x={meters} y={y() - 20} text-anchor="middle">
        A
      </text>
      <rect class="part" x={meters - 16} y={top - 22} width="72" height="28" />
      <text x={meters + 20} y={top - 4} text-anchor="middle">
        DC supply
      </text>
      <path class="outline" d={`M${meters - 34} ${y() - footLength() / 4}V${y() + footLength() / 4}`} />
      <circle class="outline paper" cx={meters - 34} cy={y()} r="11" />
      <text x={meters - 34} y={y() + 4} text-anchor="middle">
        V
      </text>
      <circle class="sensor" cx={beside()} cy={y()} r="4" />
      <path class="extension" d={`M${beside()} ${y()}V${top + length() + 14}`} />
      <text class="caption" x={beside()} y={top + length() + 26} text-anchor="middle">
        thermometer beside
      </text>
      <circle class="sensor" cx={corner().x} cy={corner().y} r="4" />
      <text class="caption" x={corner().x + 8} y={corner().y - 6}>
        or in a corner
      </text>
      <circle class="sensor" cx={left + 14} cy={top + length() + 48} r="4" />
      <text class="caption" x={left + 24} y={top + length() + 52}>
        still air, 0.3 m below, shaded
      </text>
    </svg>
  );
}
