import { createShell } from './create-shell.ts';
import { start } from './start.ts';

start(createShell());
