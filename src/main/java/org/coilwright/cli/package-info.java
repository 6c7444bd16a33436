/** Commands, files, exit codes, wiring of the rest. The only one that knows picocli. */
@org.jspecify.annotations.NullMarked
package org.coilwright.cli;
