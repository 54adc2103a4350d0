import { writeDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { saveBlob, stemOf } from '../export/files.ts';

/** "Field station: 60 W" -> "field-station-60-w.design.json" */
export function fileNameOf(design: Design): string {
  return `${stemOf(design.name)}.design.json`;
}

/** Hands the design to the browser as a download. */
export function saveFile(design: Design): void {
  saveBlob(new Blob([writeDesign(design)], { type: 'application/json' }), fileNameOf(design));
}
