package org.coilwright.pdf;

import org.apache.pdfbox.io.RandomAccess;
import org.apache.pdfbox.io.RandomAccessReadWriteBuffer;
import org.apache.pdfbox.io.RandomAccessStreamCache;

/**
 * Memory for the streams of a document. A sheet has thousands, one for each look of each field, and
 * most are shorter than a hundred bytes; the library takes 4 kB for each of them.
 */
final class SmallStreams implements RandomAccessStreamCache {
  private static final int CHUNK = 256;

  @Override
  public RandomAccess createBuffer() {
    return new RandomAccessReadWriteBuffer(CHUNK);
  }

  @Override
  public void close() {
    // its buffers are closed by the streams they belong to
  }
}
