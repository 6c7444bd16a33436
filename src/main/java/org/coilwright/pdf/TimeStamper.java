package org.coilwright.pdf;

import java.io.IOException;

/** A time stamp authority (RFC 3161), however it is reached. */
public interface TimeStamper {
  /**
   * Answers a request.
   *
   * @param request encoded TimeStampReq
   * @return encoded TimeStampResp
   * @throws IOException if no answer comes; its message says why, without a full stop
   */
  byte[] answer(byte[] request) throws IOException;
}
