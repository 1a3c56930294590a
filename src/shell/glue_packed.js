// The end of the glue in the page of a single file.
async function restBytes() {
  // Nothing is sent for: where this cannot be read, the file is damaged, and none of it can be trusted.
  try {
    return await unpacked('packed-rest');
  } catch (reason) {
    rescue.cannotLoad(reason);
    throw reason;
  }
}
bound(start);
