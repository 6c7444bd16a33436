package org.coilwright.solve;

import org.coilwright.circuit.Branch.Source;

/** Where everything that can be one way or the other stands while a zone is solved. */
interface Settings {
  /** Whether a variable is true. */
  boolean is(int variable);

  /** Whether a source gives its voltage. */
  boolean isLive(Source source);

  /** A source's voltage, folded back if it is at its limit; real part. */
  double re(Source source, Corner corner);

  /** Likewise, imaginary part. */
  double im(Source source, Corner corner);
}
