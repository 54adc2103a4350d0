/** The id of the control for a field; links from other stations and labels use it. */
export function fieldId(path: string): string {
  return `field-${path.replaceAll('.', '-')}`;
}
