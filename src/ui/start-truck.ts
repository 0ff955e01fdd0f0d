import { h, render } from 'preact';
import { fetchData } from './page-data.ts';
import { session } from './page-session.ts';
import { Truck } from './truck.tsx';

const place = document.querySelector('[data-truck]');
if (place) {
  await fetchData('all');
  const lead = document.querySelector('.lead');
  if (lead && !session.build.try()) lead.textContent = 'This browser keeps nothing for this site, so what you type is gone when you leave the page. Storage may be blocked or full. A calculator’s “Copy link” takes its numbers along.';
  place.replaceChildren();
  render(h(Truck, { session }), place);
}
