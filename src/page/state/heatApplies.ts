import type { Design } from '../../../shared/design/schema.ts';

type Condition = (design: Design) => boolean;

const finShapes = ['fins', 'finsBothSides', 'tunnel'];
const finned: Condition = ({ sink }) => finShapes.includes(sink.shape);
const tapered: Condition = (design) => finned(design) && design.sink.tapered;
const pinned: Condition = ({ sink }) => sink.shape === 'pins';
const blown: Condition = (design) => finned(design) && design.sink.fan === 'along';
const spread: Condition = ({ device }) => device.spreader;

const moduleOnPlate: Condition = ({ converter }) =>
  converter.kind === 'module' && converter.heatTo === 'amplifierSink';
const siliconOnPlate: Condition = ({ converter }) =>
  converter.kind === 'designed' && converter.heatTo === 'amplifierSink';

/** Fields of devices, sink and case that mean something only in some designs. */
export const heatConditions: Readonly<Record<string, Condition>> = {
  'device.padResistance': ({ device }) => device.pad === 'measured',
  'device.junctionToCase': ({ device }) => device.ladder === 'value' || device.ladder === 'points',
  'device.junctionTime': ({ device }) => device.ladder === 'value',
  'sink.converterPart.width': moduleOnPlate,
  'sink.switchPart.width': siliconOnPlate,
  'sink.rectifierPart.width': siliconOnPlate,
  'sink.converterPart.length': moduleOnPlate,
  'sink.switchPart.length': siliconOnPlate,
  'sink.rectifierPart.length': siliconOnPlate,
  'sink.converterPart.x': moduleOnPlate,
  'sink.switchPart.x': siliconOnPlate,
  'sink.rectifierPart.x': siliconOnPlate,
  'sink.converterPart.y': moduleOnPlate,
  'sink.switchPart.y': siliconOnPlate,
  'sink.rectifierPart.y': siliconOnPlate,
  'device.spreaderWidth': spread,
  'device.spreaderLength': spread,
  'device.spreaderThickness': spread,
  'device.spreaderMetal': spread,
  'device.spreaderPad': spread,
  'sink.tilt': ({ sink }) => sink.position === 'tilted',
  'sink.finCount': finned,
  'sink.finHeight': finned,
  'sink.finThickness': (design) => finned(design) && !design.sink.tapered,
  'sink.tapered': finned,
  'sink.finRoot': tapered,
  'sink.finTip': tapered,
  'sink.pinSection': pinned,
  'sink.pinThickness': pinned,
  'sink.pinHeight': pinned,
  'sink.pinColumns': pinned,
  'sink.pinRows': pinned,
  'sink.emissivity': ({ sink }) => sink.finish === 'own',
  'sink.backExposed': ({ sink }) => sink.shape !== 'finsBothSides',
  'sink.backShare': ({ sink }) => sink.backExposed && sink.shape !== 'finsBothSides',
  'sink.fan': finned,
  'sink.fanFlow': blown,
  'sink.fanPressure': blown,
  'sink.fanMiddleFlow': blown,
  'sink.fanMiddlePressure': blown,
  'sink.fanVoltageShare': blown,
  'sink.fanPath': (design) => blown(design) && design.sink.shape !== 'tunnel',
  'sink.bypassSection': (design) =>
    blown(design) && design.sink.shape !== 'tunnel' && design.sink.fanPath === 'bypass',
  'surroundings.ventArea': ({ surroundings }) => surroundings.caseVents === 'vented',
};
