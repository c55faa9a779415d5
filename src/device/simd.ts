// The smallest module with a SIMD instruction (i8x16.popcnt of a splat); an engine without SIMD calls it invalid.
const simdModule = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0, 10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11])

export const hasSimd = (): boolean => WebAssembly.validate(simdModule)
