import { expect, test } from 'vitest';
import { nodeComplaint } from '../../src/build/nodeVersion.mjs';

test.each(['20.19.0', '20.20.2', '22.12.0', '22.20.1', '23.0.0', '24.1.0'])(
  'Node %s is accepted',
  (version) => {
    expect(nodeComplaint(version)).toBe('');
  },
);

test.each(['12.22.9', '18.20.0', '20.18.3', '21.7.3', '22.11.0'])(
  'Node %s is refused by number',
  (version) => {
    expect(nodeComplaint(version)).toContain(version);
  },
);
