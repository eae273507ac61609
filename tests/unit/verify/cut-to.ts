import type { Resource } from '../../../src/model/index.js';

/** The resource, there between two moments only. */
export function cutTo(resource: Resource, from: number, to: number): Resource {
  return { ...resource, availability: resource.availability.map((row) => ({ ...row, from, to })) };
}
