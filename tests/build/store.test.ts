import { describe, expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import { Build, readSaved } from '../../src/build/store.ts';
import type { Storage } from '../../src/build/store.ts';
import { calculatorById } from '../../src/calculators/index.ts';
import { Session } from '../../src/ui/session.ts';

function memory(start: Record<string, string> = {}): Storage & { readonly kept: Record<string, string> } {
  const kept = { ...start };
  return { kept, getItem: (name) => kept[name] ?? null, setItem: (name, value) => { kept[name] = value; } };
}
const bore = { text: '13/16', unit: 'in', system: 'us' } as const;
const record = calculatorById('line-pressure');

describe('the build', () => {
  test('comes back from storage as it was typed', () => {
    const storage = memory();
    new Build(storage).set('frontMasterBore', bore);
    expect(new Build(storage).get('frontMasterBore')).toEqual(bore);
  });

  test.each(['', '{', 'null', '[]', '7', '{"schema":2,"values":{}}', '{"schema":1}', '{"schema":1,"values":null}', '{"schema":1,"values":{"frontMasterBore":5,"__proto__":{"text":"1","unit":"in"}}}'])('survives corrupted storage: %s', (text) => {
    const build = new Build(memory({ build: text }));
    expect(build.get('frontMasterBore')).toBeUndefined();
    build.set('frontMasterBore', bore);
    expect(build.get('frontMasterBore')).toEqual(bore);
  });

  test('works where storage is forbidden or full', () => {
    const forbid = (): never => { throw new Error('no'); };
    const build = new Build({ getItem: forbid, setItem: forbid });
    build.set('frontMasterBore', bore);
    build.setSystem('si');
    expect(build.get('frontMasterBore')).toEqual(bore);
  });

  test('keeps values of quantities that this page does not know', () => {
    const storage = memory({ build: JSON.stringify({ schema: 1, values: { somethingNewer: { text: '4', unit: 'psi', system: 'us' } } }) });
    const build = new Build(storage);
    build.set('frontMasterBore', bore);
    expect(JSON.parse(storage.kept.build as string).values.somethingNewer).toEqual({ text: '4', unit: 'psi', system: 'us' });
  });

  test('goes to a file and back', () => {
    const build = new Build(memory());
    build.set('frontMasterBore', bore);
    const read = readSaved(JSON.stringify(build.save()));
    expect(read).toEqual(build.save());
  });

  test('remembers the unit system, and shows values typed in the other one without losing them', () => {
    const storage = memory();
    const build = new Build(storage);
    build.set('frontMasterBore', bore);
    build.setSystem('si');
    expect(new Build(storage).system).toBe('si');
    const field = readRecord(record, build.get, 'si').fields.find((f) => f.key === 'frontMasterBore');
    expect(field).toMatchObject({ text: '20.6375', unit: 'mm' });
    expect(field?.value).toBeCloseTo(0.0206375, 12);
    expect(readRecord(record, build.get, 'us').fields.find((f) => f.key === 'frontMasterBore')).toMatchObject({ text: '13/16', unit: 'in' });
  });

  test('keeps text that cannot be read as it was typed, in either system', () => {
    const build = new Build(memory());
    build.set('frontMasterBore', { text: '3/', unit: 'in', system: 'us' });
    for (const system of ['us', 'si'] as const) {
      const reading = readRecord(record, build.get, system);
      expect(reading.state).toBe('blank');
      expect(reading.fields.find((f) => f.key === 'frontMasterBore')?.text).toBe('3/');
    }
  });

  test('with a unit that belongs to another kind of quantity asks again instead of guessing', () => {
    const reading = readRecord(record, (key) => (key === 'frontMasterBore' ? { text: '0.7', unit: 'psi', system: 'us' } : undefined), 'us');
    const field = reading.fields.find((f) => f.key === 'frontMasterBore');
    expect(field?.value).toBeUndefined();
    expect(field?.problem).toMatch(/psi/);
    expect(field?.text).toBe('0.7');
  });

  test('keeps what another tab has saved meanwhile', () => {
    const storage = memory();
    const [one, two] = [new Build(storage), new Build(storage)];
    one.set('controlForce', { text: '70', unit: 'lbf', system: 'us' });
    two.set('barOffset', { text: '0.2', unit: 'in', system: 'us' });
    expect(Object.keys(JSON.parse(storage.kept.build as string).values).sort()).toEqual(['barOffset', 'controlForce']);
    one.reload();
    expect(one.get('barOffset')?.text).toBe('0.2');
  });

  test('a value typed at its limit stays possible in the other unit system', () => {
    const typed = { text: '30', unit: 'mm', system: 'si' } as const;
    const field = readRecord(record, (key) => (key === 'frontMasterBore' ? typed : undefined), 'us').fields.find((f) => f.key === 'frontMasterBore');
    expect(field?.problem).toBeUndefined();
    expect(field?.value).toBe(0.03);
  });
});

describe('a device that keeps nothing', () => {
  test('is found out, and what was typed still counts on the page, all of it', () => {
    const old = JSON.stringify({ schema: 1, values: { pedalRatio: { text: '5', unit: '', system: 'us' } } });
    let full = false;
    const storage = { getItem: (name: string) => (name === 'build' ? old : null), setItem: () => { if (full) throw new Error('QuotaExceededError'); } };
    const build = new Build(storage);
    expect(build.try()).toBe(true);
    full = true;
    build.set('controlForce', { text: '55', unit: 'lbf', system: 'us' });
    expect(build.kept).toBe(false);
    build.set('barOffset', { text: '0.1', unit: 'in', system: 'us' });
    expect(['controlForce', 'barOffset', 'pedalRatio'].map((key) => build.get(key)?.text)).toEqual(['55', '0.1', '5']);
    full = false;
    build.set('barOffset', { text: '0.2', unit: 'in', system: 'us' });
    expect(build.kept).toBe(true);
  });

  test('without any storage is known from the start', () => expect(new Build(undefined).kept).toBe(false));
});

describe('a link opened over a build', () => {
  const query = '?v=1&control-force=100lbf&pedal-ratio=6&linkage-efficiency=85%25&front-share=60%25&front-master-bore=3/4in&rear-master-bore=3/4in&master-spring=0lbf';

  test('shows the sender’s numbers and leaves the reader’s alone', () => {
    const storage = memory();
    const build = new Build(storage);
    build.set('controlForce', { text: '55', unit: 'lbf', system: 'us' });
    const session = new Session(build);
    session.openLink(record, query);
    expect(session.lookup(record)('controlForce')?.text).toBe('100');
    expect(session.lookup(calculatorById('balance-bar'))('controlForce')?.text).toBe('55');
    session.type(record, 'controlForce', '120', 'lbf');
    expect(build.get('controlForce')?.text).toBe('55');
    expect(JSON.parse(storage.kept.build as string).values.controlForce.text).toBe('55');
    session.dropLink();
    expect(session.lookup(record)('controlForce')?.text).toBe('55');
  });

  test('takes back what was typed over it to its own number, not to the reader’s', () => {
    const build = new Build(memory());
    build.set('controlForce', { text: '55', unit: 'lbf', system: 'us' });
    const session = new Session(build);
    session.openLink(record, query);
    expect(session.undoes(record, 'controlForce')).toBeUndefined();
    session.type(record, 'controlForce', '120', 'lbf');
    expect(session.undoes(record, 'controlForce')).toBe('link');
    session.type(record, 'controlForce', undefined);
    expect(session.lookup(record)('controlForce')?.text).toBe('100');
    expect(session.undoes(record, 'controlForce')).toBeUndefined();
    expect(build.get('controlForce')?.text).toBe('55');
    session.dropLink();
    expect(session.undoes(record, 'controlForce')).toBe('demo');
    session.type(record, 'controlForce', undefined);
    expect(build.get('controlForce')).toBeUndefined();
  });

  test('becomes the reader’s own only on request', () => {
    const build = new Build(memory());
    const session = new Session(build);
    session.openLink(record, query);
    expect(build.get('frontMasterBore')).toBeUndefined();
    session.keepLink(record);
    expect(build.get('frontMasterBore')).toMatchObject({ text: '3/4', unit: 'in' });
    expect(session.linked(record)).toBeUndefined();
  });

  test('kept when it is broken overwrites nothing with a blank', () => {
    const build = new Build(memory());
    build.set('controlForce', { text: '70', unit: 'lbf', system: 'us' });
    const session = new Session(build);
    session.openLink(record, '?v=1&pedal-ratio=5&linkage-efficiency=psi');
    session.keepLink(record);
    expect(build.get('controlForce')?.text).toBe('70');
    expect(build.get('pedalRatio')?.text).toBe('5');
    expect(build.get('linkageEfficiency')).toBeUndefined();
    expect(build.get('frontMasterBore')).toBeUndefined();
  });

  test('kept leaves a computed value computed when the kept numbers give it', () => {
    const build = new Build(memory());
    const session = new Session(build);
    session.openLink(record, query.replace('front-share=60%25', 'front-share=62%25'));
    session.keepLink(record);
    expect(build.get('frontShare')).toBeUndefined();
    session.openLink(record, query);
    session.keepLink(record);
    expect(build.get('frontShare')?.text).toMatch(/^60/);
  });
});
