/** Measurements of speed, run by hand with {@code mvn -Pbench clean test-compile}; no test. */
package org.coilwright.bench;
