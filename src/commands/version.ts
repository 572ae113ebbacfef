// By name, so that the bundle takes this one value and not the whole file.
export { version as VERSION } from '../../package.json';
