import { fieldAt } from '../../../shared/design/leaves.ts';

export {
  fieldAt,
  knownField,
  type Leaf,
  leafAt,
  type NumberField,
  valueAt,
  withLeaf,
  withValue,
} from '../../../shared/design/leaves.ts';

/** What to call the place of a path: the field's label, or the readings of a bench run, which are a list. */
export function labelAt(path: string): string {
  const [section, index, list] = path.split('.');
  const isLog = section === 'bench' && list === 'readings';
  return fieldAt(path)?.label ?? (isLog ? `Readings of run ${Number(index) + 1}` : path);
}
