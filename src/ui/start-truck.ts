import { h, render } from 'preact';
import { fetchData } from './page-data.ts';
import { session } from './page-session.ts';
import { Truck } from './truck.tsx';

const place = document.querySelector('[data-truck]');
if (place) {
  await fetchData('all');
  place.replaceChildren();
  render(h(Truck, { session }), place);
}
