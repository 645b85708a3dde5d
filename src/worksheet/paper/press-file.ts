/** The program that prints: for a process of its own, since typesetting is one long native call. */
export const PRESS_PROGRAM = new URL('press-program.ts', import.meta.url);
