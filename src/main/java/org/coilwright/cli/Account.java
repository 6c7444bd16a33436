package org.coilwright.cli;

/**
 * What is told of several files, one after the other: nothing of a file is kept but what the end
 * needs, so that ten thousand take no more room than ten.
 */
interface Account {
  /**
   * Tells of one file. If this throws, nothing of the file has been told.
   *
   * @param inspection what came of it
   */
  void add(Inspection inspection);

  /** Tells what can only be told when every file is known. */
  void end();
}
