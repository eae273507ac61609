// Lists what the built page and the command line ship, with versions and licences, from package-lock.json.
// Exit 1 when a licence is not one of those allowed, or a version is not pinned.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

export const allowed = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD'];

/** Where the lock file puts `name` as seen from the package at `from`, as Node looks it up. */
function placeOf(packages, name, from) {
  for (
    let folder = from;
    ;
    folder = folder.slice(0, Math.max(0, folder.lastIndexOf('/node_modules/')))
  ) {
    const place = `${folder === '' ? '' : `${folder}/`}node_modules/${name}`;
    if (packages[place]) return place;
    if (folder === '' || !folder.includes('node_modules')) return undefined;
    if (!folder.includes('/node_modules/')) {
      const top = `node_modules/${name}`;
      return packages[top] ? top : undefined;
    }
  }
}

/** `A OR B` needs one allowed licence, `A AND B` needs both. */
export function isAllowed(licence) {
  if (typeof licence !== 'string') return false;
  const plain = licence.replaceAll('(', '').replaceAll(')', '');
  return plain
    .split(' OR ')
    .some((one) => one.split(' AND ').every((part) => allowed.includes(part.trim())));
}

/** Every package needed as the product runs: `{ name, version, licence, direct, ok }`, by name. */
export function runtimePackages(lock) {
  const { packages } = lock;
  const { dependencies, peerDependencies } = packages[''];
  const direct = Object.keys({ ...dependencies, ...peerDependencies });
  const found = new Map();
  const wanted = direct.map((name) => [name, '']);
  while (wanted.length > 0) {
    const [name, from] = wanted.pop();
    const place = placeOf(packages, name, from);
    const key = place ?? `missing ${name}`;
    if (found.has(key)) continue;
    const one = packages[place] ?? {};
    found.set(key, {
      name,
      version: one.version ?? 'missing',
      licence: one.license ?? 'none stated',
      direct: from === '',
      ok: isAllowed(one.license),
    });
    for (const next of Object.keys({ ...one.dependencies, ...one.optionalDependencies }))
      wanted.push([next, place]);
  }
  return [...found.values()].sort((a, b) => a.name.localeCompare(b.name));
}

/** Direct dependencies, also those of development, that package.json gives as a range. */
export function unpinned({ dependencies, devDependencies }) {
  return Object.entries({ ...dependencies, ...devDependencies })
    .filter(([, version]) => !/^\d/.test(version))
    .map(([name, version]) => `${name} ${version}`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const read = (name) => JSON.parse(readFileSync(new URL(`../${name}`, import.meta.url), 'utf8'));
  const packages = runtimePackages(read('package-lock.json'));
  for (const { name, version, licence, direct, ok } of packages)
    console.log(
      `${ok ? 'ok ' : 'NOT'}  ${name} ${version}  ${licence}${direct ? '' : '  (needed by another)'}`,
    );
  const loose = unpinned(read('package.json'));
  for (const one of loose) console.log(`NOT  ${one} is not pinned`);
  if (loose.length > 0 || packages.some((one) => !one.ok)) process.exitCode = 1;
}
