import { expect, it } from 'vitest';
import { Station } from '../../../src/page/parts/Station.tsx';
import { renderInSheet } from '../support.tsx';

it('makes what stands under its columns once: plots and tables that nobody sees would follow every edit', () => {
  let made = 0;
  const Wide = () => {
    made += 1;
    return <p>wide</p>;
  };
  const { container } = renderInSheet(() => (
    <Station id="one" number={1} title="One" given={<p />} found={<p />} wide={<Wide />} />
  ));
  expect(container.querySelector('.wide')?.textContent).toBe('wide');
  expect(made).toBe(1);
});

it('has no place under its columns where nothing stands there', () => {
  const { container } = renderInSheet(() => (
    <Station id="one" number={1} title="One" given={<p />} found={<p />} />
  ));
  expect(container.querySelector('.wide')).toBeNull();
});
