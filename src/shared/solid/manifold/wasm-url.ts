// Only the window's bundle reads this file; Node finds the WebAssembly beside the package.
export { default as kernelUrl } from 'manifold-3d/manifold.wasm?url';
