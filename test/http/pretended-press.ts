/** A press whose orders say by their title what it does: never answer, die, fail, or print the title. */
process.on('message', (order: { readonly title: string }) => {
  const { title } = order;
  if (title.startsWith('never')) return;
  if (title.startsWith('dies')) process.exit(3);
  if (title.startsWith('fails')) process.send?.({ failed: 'the ink ran out of `a name`' });
  else process.send?.({ pdf: Buffer.from(`%PDF ${title}`) });
});
