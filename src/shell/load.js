// Glue and program are asked for while the page itself is still read; `load` starts them.
const program = typeof WebAssembly === 'object' && (() => {
  const fetched = async cache => {
    const answer = await fetch('/* name */', { cache, integrity: '/* integrity */' });
    if (!answer.ok) throw new Error('A part of the program did not come: ' + answer.status);
    return answer.arrayBuffer();
  };
  const glue = import(document.querySelector('link[rel=modulepreload]').href);
  // A copy that the browser keeps may be damaged.
  const both = Promise.all([glue, fetched('default').catch(() => fetched('reload'))]);
  // Whoever starts it tells what fails.
  both.catch(() => {});
  return both;
})();

function load() {
  return program.then(([glue, bytes]) => glue.default({ module_or_path: bytes }));
}
