// Plain JavaScript without imports, so that even an old Node can read it and say what is missing.
const needed = 24;
const major = Number(process.versions.node.split('.')[0]);

if (major < needed) {
  console.error(`Gustworthy needs Node ${needed} or newer; this is Node ${process.versions.node}.`);
  console.error('');
  console.error('On Linux with an x64 processor, "npm ci" brings the right Node along: run "npm ci" without');
  console.error('--omit=optional, then start through npm ("npm start", "npm test").');
  console.error(`Anywhere else, install Node ${needed} from nodejs.org or your system's packages, check it with`);
  console.error('"node --version", and start again.');
  process.exit(1);
}
