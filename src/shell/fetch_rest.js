// Beside this file, under the name and hash of this very build: no part of another build is ever added.
async function restBytes() {
  const ask = async cache => {
    // A host that never answers is given up on.
    const signal = AbortSignal.timeout?.(60000);
    const answer = await fetch(new URL('/* name */', import.meta.url), { cache, integrity: '/* integrity */', signal });
    if (!answer.ok) throw new Error(answer.status);
    return answer.arrayBuffer();
  };
  // A copy that the browser keeps may be damaged.
  return ask('default').catch(() => ask('reload'));
}
