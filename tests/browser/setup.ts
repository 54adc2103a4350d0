import { afterAll, afterEach, expect } from 'vitest';
import { closeBrowser, closeSheets } from './support.ts';

// Every browser test also asserts that nothing went wrong in the pages it opened.
afterEach(async () => {
  expect(await closeSheets(), 'troubles in the page').toEqual([]);
});

afterAll(closeBrowser);
