// The end of the glue in the page of a single file.
async function restBytes() {
  return unpacked('packed-rest');
}
bound(__wbg_init);
