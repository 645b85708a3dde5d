import { connect } from 'node:net';

export interface RawAnswer {
  readonly status: number;
  readonly head: string;
  readonly body: string;
}

/** What a server sends back for bytes as they are, until it closes, falls silent, or has answered so many times. */
export function exchange(origin: string, bytes: string | Buffer, answers = 1, silence = 4_000): Promise<string> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve) => {
    let text = '';
    const socket = connect(Number(port), hostname, () => socket.write(bytes));
    const end = () => {
      socket.destroy();
      resolve(text);
    };
    socket.setTimeout(silence, end);
    socket.setEncoding('latin1');
    socket.on('data', (chunk: string) => {
      text += chunk;
      if (answersIn(text).length >= answers) end();
    });
    socket.on('error', end);
    socket.on('close', end);
  });
}

/** The whole answers in what a server sent; one without a length ends with the text. */
export function answersIn(text: string): RawAnswer[] {
  const answers: RawAnswer[] = [];
  let rest = text;
  while (rest.startsWith('HTTP/1.1 ')) {
    const cut = rest.indexOf('\r\n\r\n');
    if (cut < 0) break;
    const head = rest.slice(0, cut);
    const after = rest.slice(cut + 4);
    const status = Number(head.slice(9, 12));
    const length = /\r\ncontent-length: (\d+)/i.exec(head)?.[1];
    if (status === 100) {
      rest = after;
      continue;
    }
    if (length !== undefined && after.length < Number(length)) break;
    const body = length === undefined ? after : after.slice(0, Number(length));
    answers.push({ status, head, body });
    rest = after.slice(body.length);
  }
  return answers;
}
