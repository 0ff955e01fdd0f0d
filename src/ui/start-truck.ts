import { h, render } from 'preact';
import { session } from './page-session.ts';
import { Truck } from './truck.tsx';

const place = document.querySelector('[data-truck]');
if (place) {
  place.replaceChildren();
  render(h(Truck, { session }), place);
}
