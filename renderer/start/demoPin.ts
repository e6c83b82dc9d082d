/** Everybody in the demo has it; the demo's own store says the same (tests/renderer/demoPin.test.ts). */
export const DEMO_PIN = '1234';
