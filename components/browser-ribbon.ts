// For a plain page that only draws windows with their usable hours: a plan and its ribbon.
export { documentContext } from './document/define.js';
import './ribbon/define.js';
