// Read by versions of Node far older than the one we need: only old syntax here, and no imports.

/**
 * Says why this Node cannot be used, or returns an empty string. The bundler sets the bound: 20.19 or later
 * in the 20 line, or 22.12 and later.
 * @param {string} version as in process.versions.node
 * @returns {string}
 */
export function nodeComplaint(version) {
  const parts = version.split('.');
  const major = Number(parts[0]);
  const minor = Number(parts[1]);
  const usable = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  if (usable) return '';
  return (
    'Heat and Rail needs Node 20.19 or later (or 22.12 or later); this is Node ' +
    version +
    '. Get a newer one from https://nodejs.org and try again.'
  );
}

export function refuseOldNode() {
  const complaint = nodeComplaint(process.versions.node);
  if (complaint === '') return;
  console.error(complaint);
  process.exit(1);
}
