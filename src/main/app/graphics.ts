import { existsSync } from 'node:fs';
import { app } from 'electron';

/** By these a Linux system shows a graphics device: its own drivers, those of one maker, those of a hosted system. */
const DEVICES = ['/dev/dri', '/dev/nvidiactl', '/dev/dxg'] as const;

/**
 * Where there is no graphics device, none is looked for: Chromium would start a process for it in vain, then another, and
 * meanwhile paint nothing. Solids are drawn by the processor there, as they would be anyway. Must run before Electron is
 * ready.
 */
export function spareMissingGraphics(): void {
  if (process.platform === 'linux' && !DEVICES.some((device) => existsSync(device))) app.disableHardwareAcceleration();
}
