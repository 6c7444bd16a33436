/** Measurements of speed, run by hand with {@code mvn -Pbench test-compile}; no test. */
package org.coilwright.bench;
