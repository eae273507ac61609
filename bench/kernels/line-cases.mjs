// Reads the published line balancing problems in place.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { published } from './bundle.mjs';

function rowsOf(path) {
  const [head, ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const names = head.split(',');
  return lines.map((line) =>
    Object.fromEntries(line.split(',').map((cell, i) => [names[i], cell])),
  );
}

function pairsOf(lines) {
  return lines
    .map((line) => line.match(/^\s*(-?\d+)\s*,\s*(-?\d+)/))
    .filter((hit) => hit && Number(hit[1]) > 0)
    .map((hit) => [Number(hit[1]) - 1, Number(hit[2]) - 1]);
}

function readIn2(path) {
  const lines = readFileSync(path, 'latin1').split(/\r?\n/);
  const n = Number.parseInt(lines[0], 10);
  const times = Int32Array.from(lines.slice(1, n + 1), (line) => Number.parseInt(line, 10));
  const end = lines.findIndex((line, i) => i > n && /^\s*-1\s*,/.test(line));
  return { times, precedence: pairsOf(lines.slice(n + 1, end < 0 ? undefined : end)) };
}

function readAlb(path) {
  const text = readFileSync(path, 'latin1');
  const part = (name) => text.split(`<${name}>`)[1].split('<')[0].trim().split(/\r?\n/);
  const times = Int32Array.from(part('task times'), (line) => Number(line.trim().split(/\s+/)[1]));
  return { times, precedence: pairsOf(part('precedence relations')) };
}

/** All cases: set, name, times, precedence, capacity and the published bounds. Empty, with a message, where absent. */
export function lineCases(only) {
  if (!existsSync(join(published, 'line-balancing-1993'))) {
    console.log(`skipped: no published problems at ${published}`);
    return [];
  }
  const first = rowsOf(join(published, 'line-balancing-1993/optima.csv')).map((r) => ({
    set: '1993',
    name: `${r.graph_file} ${r.cycle_time}`,
    ...readIn2(join(published, 'line-balancing-1993/graphs', r.graph_file)),
    capacity: Number(r.cycle_time),
    lower: Number(r.published_stations),
    upper: Number(r.published_stations),
  }));
  const second = rowsOf(join(published, 'line-balancing-2013/bounds.csv')).map((r) => ({
    set: `2013 ${r.set}`,
    name: r.instance,
    ...readAlb(join(published, 'line-balancing-2013', r.set, `${r.instance}.alb`)),
    capacity: Number(r.cycle_time),
    lower: Number(r.lb),
    upper: Number(r.ub),
  }));
  return [...first, ...second].filter((c) => `${c.set} ${c.name}`.includes(only));
}
