// Two files that the head asked for already.
function load() {
  const asked = name => document.querySelector(`link[rel=${name}]`).href;
  return import(asked('modulepreload')).then(app => app.default({ module_or_path: asked('preload') }));
}
