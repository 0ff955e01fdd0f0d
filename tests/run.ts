/**
 * Everything that must hold, in order: types, then tests of engine, units, records and words, then the built site,
 * then the site in a browser. Stops at nothing, says at the end how much passed.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findBrowser } from './browser/browser.ts';

process.env.ASTRO_TELEMETRY_DISABLED = '1';
let passed = 0;
let failed = 0;

function step(name: string, command: string, args: readonly string[]): void {
  process.stdout.write(`\n== ${name}\n`);
  const ok = spawnSync(command, args, { stdio: 'inherit' }).status === 0;
  ok ? passed++ : failed++;
}

function vitest(name: string, project: string): void {
  process.stdout.write(`\n== ${name}\n`);
  const report = join(tmpdir(), `report-${project}-${process.pid}.json`);
  const { status } = spawnSync('vitest', ['run', '--config', 'tests/vitest.config.ts', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`], { stdio: 'inherit' });
  try {
    const { numPassedTests = 0, numFailedTests = 0 } = JSON.parse(readFileSync(report, 'utf8')) as Record<string, number>;
    passed += numPassedTests;
    // A file that cannot be loaded has no tests to fail, but it has failed.
    failed += Math.max(numFailedTests, status === 0 ? 0 : 1);
    rmSync(report);
  } catch {
    failed++;
  }
}

findBrowser();
step('types', 'astro', ['check', '--minimumSeverity', 'warning']);
vitest('engine, units, records, words', 'paper');
step('build', 'astro', ['build']);
vitest('the site in a browser', 'browser');

process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
