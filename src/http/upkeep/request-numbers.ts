import { randomBytes } from 'node:crypto';

/** Gives every request a number that no other has, after a restart and beside other copies of the service too. */
export function requestNumbers(): () => string {
  const process = randomBytes(4).toString('hex');
  let count = 0;
  return () => {
    count += 1;
    return `${process}-${count}`;
  };
}
