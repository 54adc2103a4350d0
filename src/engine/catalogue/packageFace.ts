import faceTable from '../../../reference-data/packageFaces.json' with { type: 'json' };
import type { DeviceInput } from '../../../shared/design/schema.ts';

type Face = Pick<DeviceInput, 'contactLength' | 'contactWidth'>;

/**
 * Usual contact face of a package, m; null for "other". Source: `packageFaces.json`, round figures from memory: a caliper
 * or the data sheet of the part counts.
 */
export function usualFace(bodyPackage: DeviceInput['package']): Face | null {
  if (bodyPackage === 'other') return null;
  const { length, width } = faceTable.rows[bodyPackage];
  return { contactLength: length, contactWidth: width };
}
